import { describe, expect, it } from 'vitest';
import { issueFor, issueWords, numberFrom } from '../../dashboard/parts/field.tsx';
import { enemyWords, pestNames, speciesName } from '../../dashboard/words/names.ts';
import {
  countedWords,
  insectRange,
  insects,
  money,
  unbroken,
  wholeTrap,
} from '../../dashboard/words/numbers.ts';
import { slugFrom } from '../../dashboard/words/slugs.ts';
import { enemyIds, pestIds, slug } from '../../services/model/index.ts';
import { speciesById } from '../../services/model/species/catalogue.ts';

describe('names', () => {
  it.each(pestIds)('of %s are those of its species record', (id) => {
    expect(pestNames[id]).toBe(speciesById(id).shortName);
  });
  it.each(enemyIds)('of %s are those of its species record', (id) => {
    const { shortName, traits } = speciesById(id);
    expect(enemyWords[id].name).toBe(shortName);
    expect(traits.kind === 'enemy' && traits.release?.form).toBe(enemyWords[id].form);
  });
  it('an unknown species stays readable', () => expect(speciesName('some-new-mite')).toBe('some new mite'));
});

describe('numbers', () => {
  it('bands are told as bands', () => {
    expect(countedWords(14)).toBe('14');
    expect(countedWords({ low: 6, high: 20 })).toBe('6–20');
    expect(countedWords({ low: 101, high: 2000 })).toBe('101 or more');
    expect(insects(13.6)).toBe('14');
  });

  // n / f and its spread from the variance of the negative binomial, (n + 1)(1 - f) / f² (Johnson, Kemp & Kotz 2005, §5.3, from memory).
  it('part of a trap stands for about n / f', () => {
    const { about, from, to } = wholeTrap(7, 0.5);
    const sd = Math.sqrt((8 * 0.5) / 0.25);
    expect(about).toBe(14);
    expect(from).toBe(Math.round(14 - 1.28 * sd));
    expect(to).toBe(Math.round(14 + 1.28 * sd));
    expect(wholeTrap(3, 1)).toEqual({ about: 3, from: 3, to: 3 });
  });

  it('dates, counts and units never break', () => {
    expect(unbroken('by Mon 18 May')).toBe('by Mon\u00a018\u00a0May');
    expect(unbroken('(8 of 10) above 18 °C')).toBe('(8\u00a0of\u00a010) above 18\u00a0°C');
  });

  it('typed numbers may carry a comma, and nothing typed is nothing', () => {
    expect(numberFrom('11,5')).toBe(11.5);
    expect(numberFrom('')).toBeUndefined();
    expect(numberFrom('many')).toBeUndefined();
  });

  // ISO 4217 code and the CLDR pattern of British English (Unicode CLDR en-GB).
  it('no more insects than a trap can hold', () => {
    expect([insects(0.4), insects(12.6), insects(5045)]).toEqual(['0', '13', 'a full trap']);
    expect([insectRange(3, 3.2), insectRange(160, 2556)]).toEqual(['3', '160 to a full trap']);
  });

  it('money one way, also in the sentences of the house', () => {
    expect(unbroken('Left, about 94 EUR may be lost, for 17.30 GBP; the PH 1 of 2 ABC.')).toBe(
      'Left, about €94 may be lost, for £17.30; the PH 1\u00a0of\u00a02 ABC.',
    );
  });

  it('money in its currency', () => expect(money(14.9, 'EUR')).toBe('€14.90'));
});

describe('ids', () => {
  it.each(['Großes Haus', 'The end house', '  Été 2 ', '???', 'x'.repeat(90)])(
    '%s becomes a slug',
    (name) => {
      expect(slug.safeParse(slugFrom(name)).success).toBe(true);
    },
  );
  it('never one that is taken', () => expect(slugFrom('Bench', ['bench', 'bench-2'])).toBe('bench-3'));
});

describe('a refusal at its field', () => {
  const issue = { path: '/counts/whitefly', expected: 'send 0 or more', received: '-3' };
  const refused = { code: 'record-invalid', reason: '', whatToDo: '', issues: [issue] };
  it('is found under any way to write the path', () => {
    expect(issueFor(refused, 'counts.whitefly')).toBe(issue);
    expect(issueFor(refused, 'counts.aphid')).toBeUndefined();
  });
  it('is told in the words of the service', () =>
    expect(issueWords(issue)).toBe('Send 0 or more; this was -3.'));
});
