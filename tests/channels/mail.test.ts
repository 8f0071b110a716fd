/** Mail against a real SMTP server on this machine. */
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { afterEach, describe, expect, it } from 'vitest';
import { createMailChannel } from '../../services/warnings/channels/mail.ts';
import { dailyMessage, type Message } from '../../services/warnings/message.ts';
import { place, wednesdayMs } from '../warnings/house.ts';
import { decoded } from './mime.ts';

const closers: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closers.splice(0)) await close();
});

async function mailServer(options: SMTPServerOptions = {}) {
  const received: { from: string; to: string[]; text: string }[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, { envelope }, callback) {
      const parts: Buffer[] = [];
      stream.on('data', (part: Buffer) => parts.push(part));
      stream.on('end', () => {
        received.push({
          from: envelope.mailFrom ? envelope.mailFrom.address : '',
          to: envelope.rcptTo.map(({ address }) => address),
          text: Buffer.concat(parts).toString('utf8'),
        });
        callback();
      });
    },
    ...options,
  });
  server.on('error', () => {});
  server.listen(0, '127.0.0.1');
  await once(server.server, 'listening');
  closers.push(() => new Promise((resolve) => server.close(() => resolve())));
  const { port } = server.server.address() as AddressInfo;
  return { received, port };
}
const channelTo = (port: number, login = '') =>
  createMailChannel({ url: `smtp://${login}127.0.0.1:${port}`, from: 'glasshouse@example.org' });

const message: Message = dailyMessage(
  place,
  {
    raised: [
      {
        id: 'order-by',
        placeId: place.id,
        rule: 'order-by',
        raisedAtMs: wednesdayMs,
        deadlineMs: Date.parse('2026-05-18T11:00:00Z'),
        text: 'Order 2 cards of Encarsia by Mon 18 May: it stays above 18 °C & <warm>.',
        reason: 'The last count was 14 whitefly a trap and week.',
        ends: 'Ends when the order is entered.',
        state: 'open',
      },
    ],
    withdrawn: [],
  },
  'http://192.0.2.7:8080',
);

describe('a mail', () => {
  it('arrives at the server with sender, receiver, and the same words as text and as HTML', async () => {
    const { received, port } = await mailServer();
    await channelTo(port).send('ada@example.org', message);
    expect(received).toHaveLength(1);
    const [mail] = received;
    expect(mail).toMatchObject({ from: 'glasshouse@example.org', to: ['ada@example.org'] });
    const { headers, parts } = decoded(mail?.text ?? '');
    expect(headers['auto-submitted']).toBe('auto-generated');
    expect(headers.subject).toContain('Order 2 cards of Encarsia by Mon 18 May');
    // RFC 2046, 5.1.4: the plainest alternative first.
    expect(parts.map(({ type }) => type)).toEqual(['text/plain', 'text/html']);
    for (const words of [
      'above 18 °C',
      '14 whitefly a trap and week',
      'Until Mon 18 May',
      'http://192.0.2.7:8080',
    ]) {
      for (const part of parts) expect(part.body, part.type).toContain(words);
    }
    expect(parts[1]?.body).toContain('&amp; &lt;warm&gt;');
  });

  it('is readable without pictures and fetches nothing', async () => {
    const { received, port } = await mailServer();
    await channelTo(port).send('ada@example.org', message);
    const html = decoded(received[0]?.text ?? '').parts[1]?.body ?? '';
    expect(html).toContain('<html lang="en">');
    expect(html).not.toMatch(/<(img|script|link|iframe|object)|url\(|src=|@import/i);
    expect([...html.matchAll(/href="([^"]+)"/g)].map((found) => found[1])).toEqual(['http://192.0.2.7:8080']);
  });

  it('signs in with the name and password of the address', async () => {
    const names: (string | undefined)[] = [];
    const { received, port } = await mailServer({
      authOptional: false,
      onAuth({ username, password }, _session, callback) {
        names.push(username);
        if (password === 'pear tree') callback(null, { user: username });
        else callback(new Error('no'));
      },
    });
    await channelTo(port, 'house:pear%20tree@').send('ada@example.org', message);
    expect(names).toEqual(['house']);
    expect(received).toHaveLength(1);
    await expect(channelTo(port, 'house:wrong@').send('ada@example.org', message)).rejects.toThrow(
      /^The mail server did not take the name and password\.$/,
    );
  });

  it('says what the server would not take, and when nobody answers', async () => {
    const refusing = (responseCode: number): SMTPServerOptions => ({
      onRcptTo: (_address, _session, callback) => callback(Object.assign(new Error('no'), { responseCode })),
    });
    const unknown = await mailServer(refusing(550));
    await expect(channelTo(unknown.port).send('nobody@example.org', message)).rejects.toThrow(
      'The mail server did not take the address (550).',
    );
    const gone = await mailServer();
    await closers.pop()?.();
    await expect(channelTo(gone.port).send('ada@example.org', message)).rejects.toThrow(
      'The mail server did not answer (ESOCKET).',
    );
  });
});
