/** The person's own limit on the settings page: which one counts, and that it is shown as chosen. */
import { expect, it } from 'vitest';
import { leaningsFor, limitHint } from '../../dashboard/pages/settings/limitWords.ts';

const leanings = [
  { words: 'some is fine', limit: 30 },
  { words: 'hardly any', limit: 5 },
];

it('says which limit counts now, and which one when the field is empty', () => {
  expect(limitHint(40, 10)).toBe(
    'Your own limit, 40, counts now. Empty the field, and the usual one, 10, counts.',
  );
  expect(limitHint(undefined, 10)).toBe('No limit of your own yet: the usual one, 10, counts.');
});

it('offers a number that is no starting point as the person’s own: as typed, else as kept', () => {
  const own = (limit: number) => [...leanings, { words: 'your own number', limit }];
  expect(leaningsFor(leanings, ['40', 40])).toEqual(own(40));
  expect(leaningsFor(leanings, ['30', 40])).toEqual(own(40));
  expect(leaningsFor(leanings, ['22', 40])).toEqual(own(22));
  expect(leaningsFor(leanings, ['30', undefined])).toEqual(leanings);
  expect(leaningsFor(leanings, ['', 5])).toEqual(leanings);
});
