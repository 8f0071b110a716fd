/** The part of the past or future a question is about, from the query of a request. */
import { z } from 'zod';
import { instant } from '../model/index.ts';
import { RefusalError } from '../refusals.ts';

export const windowQuery = z.object({ from: instant.optional(), to: instant.optional() });

const weekMs = 7 * 86_400_000;

/** Milliseconds from (inclusive) and to (exclusive); the last seven days when nothing is said. */
export function windowOf(
  query: z.infer<typeof windowQuery>,
  nowMs: number,
): { fromMs: number; toMs: number } {
  const toMs = query.to === undefined ? nowMs + 1 : Date.parse(query.to);
  const fromMs = query.from === undefined ? toMs - weekMs : Date.parse(query.from);
  if (fromMs < toMs) return { fromMs, toMs };
  throw new RefusalError({
    code: 'record-invalid',
    reason: 'The window ends before it begins.',
    issues: [{ path: 'from', expected: `send a time before ${isoOf(toMs)}`, received: isoOf(fromMs) }],
  });
}

export const isoOf = (ms: number): string => new Date(ms).toISOString();
