/** Stands between a client and an HTTP server and counts the bytes of each answer. */
import { once } from 'node:events';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface AnswerCounter {
  url: string;
  /** Bytes of each answer so far; whoever counts empties it. */
  answers: number[];
  close(): Promise<void>;
}

export async function countAnswers(target: string): Promise<AnswerCounter> {
  const answers: number[] = [];
  const server = createServer((asked, answer) => {
    const { method, headers, url } = asked;
    const passed = request(new URL(url ?? '/', target), { method, headers }, (answered) => {
      const at = answers.push(0) - 1;
      answered.on('data', (part: Buffer) => {
        answers[at] = (answers[at] ?? 0) + part.length;
      });
      answer.writeHead(answered.statusCode ?? 500, answered.headers);
      answered.pipe(answer);
    });
    passed.on('error', () => answer.destroy());
    asked.pipe(passed);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    answers,
    async close() {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}
