/** Writes that are no single record: done once, and answered as the first time when they are sent again. */
import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import { RefusalError } from '../refusals.ts';
import type { ApiDeps } from './deps.ts';
import { idempotencyKey } from './writes.ts';

/** Answers to keys; what is still at work is waited for, not begun a second time. */
export function answeringOnce({ store: { answered }, clock }: Pick<ApiDeps, 'store' | 'clock'>) {
  const underWay = new Map<string, { sent: string; answer: Promise<object> }>();

  return async <T extends object>(request: FastifyRequest, work: () => Promise<T>): Promise<T> => {
    const key = idempotencyKey(request);
    const sent = createHash('sha256').update(JSON.stringify(request.body)).digest('base64url');
    const working = underWay.get(key);
    if (working) return sameRequest(working.sent, sent, (await working.answer) as T);
    const done = answered.get(key);
    if (done) return sameRequest(done.request, sent, JSON.parse(done.answer) as T);
    const answer = work();
    underWay.set(key, { sent, answer });
    try {
      const given = await answer;
      answered.keep(key, { request: sent, answer: JSON.stringify(given), atMs: clock.nowMs() });
      return given;
    } finally {
      underWay.delete(key);
    }
  };
}

function sameRequest<T>(before: string, now: string, answer: T): T {
  if (before === now) return answer;
  throw new RefusalError({
    code: 'idempotency-key-reused',
    reason: 'This key was used before, to send something else. Nothing was changed.',
  });
}
