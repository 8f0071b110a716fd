/** One line of JSON a request, without headers, bodies or whatever in an address is a secret. */
import type { FastifyServerOptions } from 'fastify';
import { withoutSecrets } from '../access/door.ts';

export function logging(
  level: 'info' | 'silent',
  stream: { write(line: string): void } = process.stderr,
): NonNullable<FastifyServerOptions['logger']> {
  if (level === 'silent') return false;
  return {
    level,
    stream,
    serializers: {
      req: ({ method, url, ip }) => ({ method, url: withoutSecrets(url), remoteAddress: ip }),
    },
  };
}
