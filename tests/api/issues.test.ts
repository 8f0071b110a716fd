import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { fieldName, issuesOf, pathName, sentenceOf } from '../../services/issues.ts';
import { seasonSchema } from '../../services/model/index.ts';

function issues(schema: z.ZodType, sent: unknown) {
  const result = schema.safeParse(sent);
  if (result.success) throw new Error('the schema took it');
  return issuesOf(result.error, sent);
}

describe('what is wrong is said in our words', () => {
  test.each([
    ['a type', z.number(), 'x', 'a number is needed here'],
    ['a whole number', z.int(), 2.5, 'a whole number is needed here'],
    ['a choice', z.enum(['Cel', 'Far']), 'Rankine', 'send one of Cel, Far'],
    ['a fixed word', z.literal('glasstide-season'), 'x', 'send glasstide-season'],
    ['a lower bound', z.number().min(2), 1, 'send at least 2'],
    ['an open lower bound', z.number().gt(2), 2, 'send more than 2'],
    ['an upper bound', z.number().max(2), 3, 'send at most 2'],
    ['a short text', z.string().min(2), 'a', 'send at least 2 characters'],
    ['no text at all', z.string().min(1), '', 'send at least one character'],
    ['a long text', z.string().max(2), 'abc', 'send at most 2 characters'],
    ['a form without words', z.string().regex(/^[A-Z]+$/), 'a', 'send it in its documented form'],
    ['an empty list', z.array(z.number()).min(1), [], 'send at least one entry'],
    ['one of two types', z.union([z.number(), z.object({})]), 'x', 'a number is needed here'],
    [
      'one of two plain types',
      z.union([z.number(), z.boolean()]),
      'x',
      'a number or true or false is needed here',
    ],
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
      { path: 'readings[1].time', expected: 'a text is needed here', received: '7' },
    ]);
  });

  test('a long value is shortened', () => {
    expect(issues(z.number(), 'x'.repeat(500))[0]?.received).toHaveLength(60);
  });

  test('the sentence names the first and counts the others', () => {
    const wrong = issues(z.object({ a: z.number(), b: z.number(), c: z.number() }), { a: 'x' });
    expect(sentenceOf(wrong)).toBe('“A” is "x": a number is needed here. 2 more fields are listed.');
  });

  test.each([
    ['a box left empty', z.number(), null, '“Lowest” is empty: a number is needed here.'],
    ['no text', z.string().min(1), '', '“Lowest” is empty: send at least one character.'],
    ['a field left out', z.number(), undefined, '“Lowest” is missing: a number is needed here.'],
    ['a figure', z.number().min(1), 0, '“Lowest” is 0: send at least 1.'],
  ])('%s', (_, schema, sent, sentence) => {
    expect(sentenceOf(issues(z.object({ minC: schema }), { minC: sent }))).toBe(sentence);
  });

  test('for a script the field keeps the name it has there', () => {
    const wrong = issues(z.object({ minC: z.number() }), {});
    expect(sentenceOf(wrong, pathName)).toBe('minC is missing: a number is needed here.');
  });

  test.each([
    ['areaM2', '“Size in m²”'],
    ['number', '“Number”'],
    ['supplier.parcelFee', '“Parcel fee in supplier”'],
    ['limits.myzus-persicae', '“Peach aphids in limits”'],
    ['readings[1].time', '“Time in entry 2 of readings”'],
    ['[0].constructor', '“Constructor in entry 1 of the list”'],
    ['', 'What was sent'],
  ])('the field %s is called %s', (path, name) => {
    expect(fieldName(path)).toBe(name);
  });

  test('every field that a place, a record or a season has is called without its unit suffix', () => {
    const schema = JSON.stringify(z.toJSONSchema(seasonSchema));
    const all = [...schema.matchAll(/"(\w+)":\{/g)].map((match) => match[1] ?? '');
    expect(all).toEqual(expect.arrayContaining(['leafAreaM2', 'humidityPct', 'takenDownAt']));
    expect(all.filter((name) => / (c|m2|deg|pct|id|at)\b/i.test(fieldName(name)))).toEqual([]);
  });
});
