import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { issuesOf, sentenceOf } from '../../services/issues.ts';

function issues(schema: z.ZodType, sent: unknown) {
  const result = schema.safeParse(sent);
  if (result.success) throw new Error('the schema took it');
  return issuesOf(result.error, sent);
}

describe('what is wrong is said in our words', () => {
  test.each([
    ['a type', z.number(), 'x', 'send a number'],
    ['a whole number', z.int(), 2.5, 'send a whole number'],
    ['a choice', z.enum(['Cel', 'Far']), 'Rankine', 'send one of Cel, Far'],
    ['a fixed word', z.literal('glasstide-season'), 'x', 'send glasstide-season'],
    ['a lower bound', z.number().min(2), 1, 'send at least 2'],
    ['an open lower bound', z.number().gt(2), 2, 'send more than 2'],
    ['an upper bound', z.number().max(2), 3, 'send at most 2'],
    ['a short text', z.string().min(2), 'a', 'send at least 2 characters'],
    ['an empty list', z.array(z.number()).min(1), [], 'send at least 1 entries'],
    ['one of two types', z.union([z.number(), z.object({})]), 'x', 'send a number or an object'],
    ['our own message', z.number().min(0, { error: 'send 0 or more' }), -1, 'send 0 or more'],
  ])('%s', (_, schema, sent, expected) => {
    expect(issues(z.object({ field: schema }), { field: sent })[0]).toMatchObject({
      path: 'field',
      expected,
    });
  });

  test('the path leads into lists', () => {
    const schema = z.object({ readings: z.array(z.object({ time: z.string() })) });
    expect(issues(schema, { readings: [{ time: 'a' }, { time: 7 }] })).toEqual([
      { path: 'readings[1].time', expected: 'send a string', received: '7' },
    ]);
  });

  test('a long value is shortened', () => {
    expect(issues(z.number(), 'x'.repeat(500))[0]?.received).toHaveLength(60);
  });

  test('the sentence names the first and counts the others', () => {
    const wrong = issues(z.object({ a: z.number(), b: z.number(), c: z.number() }), { a: 'x' });
    expect(sentenceOf(wrong)).toBe('a came as "x"; send a number. 2 more fields are listed.');
  });
});
