import { type Refusal, refusals } from '../../refusals.ts';

/** Text in quotes is left alone; a bare word for "no number" outside quotes is a dead value. */
const quotedOrDead = /"(?:[^"\\]|\\.)*"|[+-]?\b(?:nan|inf(?:inity)?)\b/gi;

/**
 * Reads JSON, and the near-JSON of boards that print a dead probe as bare `nan`: one such word would
 * make the whole message unreadable, so it becomes null (missing), never 0.
 */
export function parseNearJson(text: string): { value: unknown } | Refusal {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return parseRescued(text);
  }
}

function parseRescued(text: string): { value: unknown } | Refusal {
  const rescued = text.replace(quotedOrDead, (word) => (word.startsWith('"') ? word : 'null'));
  try {
    return { value: JSON.parse(rescued) };
  } catch {
    const received = text.trim().slice(0, 60);
    return {
      code: 'payload-unreadable',
      reason: `The payload begins with ${received} and is no JSON. ${refusals['payload-unreadable'].whatToDo}`,
      issues: [{ path: '', expected: 'send a plain number, a JSON object or SenML', received }],
    };
  }
}
