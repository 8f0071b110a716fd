/** Rules for every write: it carries an Idempotency-Key, so that it can be sent again without harm. */
import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import { RefusalError } from '../refusals.ts';

const writing = new Set(['POST', 'PUT', 'DELETE', 'PATCH']);

/** Refuses a write without a key before anything else is looked at. */
export async function requireKey(request: FastifyRequest): Promise<void> {
  if (writing.has(request.method)) idempotencyKey(request);
}

/** The key as the store keeps it: one key may serve different routes without a mix-up. */
export function idempotencyKey(request: FastifyRequest): string {
  const sent = request.headers['idempotency-key'];
  if (typeof sent === 'string' && sent.length > 0 && sent.length <= 200) {
    return `${request.method} ${request.url} ${sent}`;
  }
  throw new RefusalError({
    code: 'idempotency-key-missing',
    reason: 'This write came without a key of 1 to 200 characters, so it was not done.',
    issues: [
      {
        path: 'Idempotency-Key',
        expected: 'send a header of 1 to 200 characters, such as a UUID',
        received: typeof sent === 'string' ? `${sent.length} characters` : 'nothing',
      },
    ],
  });
}

/** An id for a new record. Made from the key, so that the same entry sent twice is the same record. */
export function idFromKey(request: FastifyRequest): string {
  return createHash('sha256').update(idempotencyKey(request)).digest('hex').slice(0, 16);
}

/** Refuses data whose id differs from the one in the path. */
export function sameId(field: string, inPath: string, inBody: string): void {
  if (inPath === inBody) return;
  throw new RefusalError({
    code: 'record-invalid',
    reason: `The path names ${inPath} and the data names ${inBody}. Nothing was changed.`,
    issues: [{ path: field, expected: `send ${inPath}, or leave it out`, received: inBody }],
  });
}
