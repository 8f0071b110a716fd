import { describe, expect, it } from 'vitest';
import { fit as fitted, forecast } from '../../services/model/forecast.ts';
import { forecastSchema, type PestForecast } from '../../services/model/outcome.ts';
import type { Release } from '../../services/model/season.ts';
import { onDay, sampleSeason } from './sample.ts';

const members = 120;
const rising = [0, 0, 1, 0, 2, 4, 7, 12];
const grown = sampleSeason({ weeks: 8, whitefly: rising });
const asOf = onDay(56);
const grownFit = fitted(grown, asOf, { members });
const whitefly = (result: { pests: PestForecast[] }): PestForecast => result.pests[0]!;

const cards: Release = {
  id: 'r',
  enemy: 'encarsia-formosa',
  form: 'pupa on card',
  number: 120,
  time: onDay(59),
  aliveShare: 1,
};

describe('a forecast', () => {
  it('keeps its published shape and is plain JSON', () => {
    const parsed = forecastSchema.parse(JSON.parse(JSON.stringify(grownFit.forecast)));
    expect(parsed).toEqual(grownFit.forecast);
    expect(whitefly(parsed).weeks).toHaveLength(8);
    expect(whitefly(parsed).past).toHaveLength(8);
  });

  it('same season, instant and seed: the same bit for bit; another seed: not', () => {
    const again = forecast(grown, asOf, { members });
    expect(JSON.stringify(again)).toBe(JSON.stringify(grownFit.forecast));
    expect(JSON.stringify(forecast(grown, asOf, { members, seed: 2 }))).not.toBe(JSON.stringify(again));
  });

  it('later data cannot change an earlier forecast', () => {
    const earlier = onDay(35.2);
    const cut = {
      ...grown,
      readings: grown.readings.filter((reading) => Date.parse(reading.time) <= Date.parse(earlier)),
      trapCounts: grown.trapCounts.filter((count) => Date.parse(count.time) <= Date.parse(earlier)),
    };
    const known = forecast({ ...grown, releases: [cards] }, earlier, { members });
    expect(JSON.stringify(known)).toBe(JSON.stringify(forecast(cut, earlier, { members })));
  });

  it('the order in which records were sent changes nothing', () => {
    const small = sampleSeason({ weeks: 4, whitefly: [0, 2, 3, 6], aphids: [0, 0, 1, 4] });
    const turned = {
      ...small,
      place: { ...small.place, pests: [...small.place.pests].reverse() },
      readings: [...small.readings].reverse(),
      traps: [...small.traps].reverse(),
      trapCounts: [...small.trapCounts].reverse(),
    };
    const [one, other] = [small, turned].map((season) => forecast(season, onDay(28), { members: 60 }));
    expect(JSON.stringify(other!.pests.reverse())).toBe(JSON.stringify(one!.pests));
  });

  it('quantiles never cross and weeks follow each other', () => {
    const { past, weeks } = whitefly(grownFit.forecast);
    for (const week of [...past, ...weeks]) {
      for (const range of [week.count, week.adultsPerM2, week.youngPerM2]) {
        const values = [range.q025, range.q10, range.q25, range.q50, range.q75, range.q90, range.q975];
        expect(values).toEqual([...values].sort((a, b) => a - b));
      }
    }
    const ends = [...past, ...weeks].map((week) => Date.parse(week.end));
    for (let i = 1; i < ends.length; i++) expect(ends[i]! - ends[i - 1]!).toBe(7 * 86_400_000);
    expect(ends[past.length - 1]).toBe(Date.parse(asOf));
  });

  it('follows the counts: the last week seen lies within 19 of 20, and grows from there', () => {
    const { past, weeks, probabilityPresent, passesLimit } = whitefly(grownFit.forecast);
    expect(past.at(-1)!.count.q025).toBeLessThanOrEqual(12);
    expect(past.at(-1)!.count.q975).toBeGreaterThanOrEqual(12);
    expect(weeks[4]!.count.q50).toBeGreaterThan(12);
    expect(probabilityPresent).toBeGreaterThan(0.97);
    expect(passesLimit.probability).toBeGreaterThan(0.8);
    expect(passesLimit.when!.q50 > asOf && passesLimit.when!.q50 < passesLimit.by).toBe(true);
  });

  it('ranges of the counts widen with lead time in proportion', () => {
    const { weeks } = whitefly(grownFit.forecast);
    const width = (i: number) => Math.log(1 + weeks[i]!.count.q90) - Math.log(1 + weeks[i]!.count.q10);
    expect(width(5)).toBeGreaterThan(width(0));
  });

  it('dates the next wave within one generation', () => {
    const [first, second] = whitefly(grownFit.forecast).waves;
    // 381 degree-days above 8.3 at about 21 to 24 degC: 24 to 30 days from egg to adult.
    expect(Date.parse(first!.adults.q50) - Date.parse(asOf)).toBeLessThan(31 * 86_400_000);
    expect(first!.adults.q50 < second!.adults.q50).toBe(true);
  });
});

describe('what if', () => {
  it('a release of Encarsia lowers the forecast', () => {
    const plain = whitefly(grownFit.forecast);
    const released = grownFit.withMore('trialeurodes-vaporariorum', { releases: [cards] });
    expect(released.weeks[7]!.adultsPerM2.q50).toBeLessThan(0.6 * plain.weeks[7]!.adultsPerM2.q50);
    expect(released.passesLimit.probability).toBeLessThanOrEqual(plain.passesLimit.probability);
    const encarsia = released.enemies.find((enemy) => enemy.enemy === 'encarsia-formosa')!;
    expect(encarsia.perM2).toHaveLength(9);
    expect(encarsia.parasitisedShare!.at(-1)!.share.q50).toBeGreaterThan(0.1);
    expect(plain.enemies).toEqual([]);
  });

  it('an enemy of another pest changes nothing', () => {
    const other = grownFit.withMore('trialeurodes-vaporariorum', {
      releases: [{ ...cards, enemy: 'aphidius-colemani' }],
    });
    expect(other.weeks).toEqual(whitefly(grownFit.forecast).weeks);
  });

  it('a wash lowers the next week', () => {
    const washed = grownFit.withMore('trialeurodes-vaporariorum', {
      treatments: [{ id: 't', kind: 'soap', time: onDay(56.5), coveredShare: 0.9 }],
    });
    const plain = whitefly(grownFit.forecast);
    expect(washed.weeks[0]!.adultsPerM2.q50).toBeLessThan(plain.weeks[0]!.adultsPerM2.q50);
  });

  it('asks for a pest of the place', () => {
    expect(() => grownFit.withMore('aphis-gossypii', {})).toThrow(/add it to the place/);
  });
});

describe('doubts and awkward seasons', () => {
  const codes = (result: { doubts: { code: string }[] }) => result.doubts.map((doubt) => doubt.code);

  it('nothing at all yet: the forecast exists, wide, and says so', () => {
    const empty = sampleSeason({ weeks: 0, whitefly: [] });
    const result = forecast(empty, onDay(1), { members });
    expect(codes(result)).toEqual(['no-temperature', 'no-counts:trialeurodes-vaporariorum']);
    expect(whitefly(result).past).toEqual([]);
    expect(whitefly(result).lastCountSurprise).toBeUndefined();
    expect(whitefly(result).weeks[7]!.count.q975).toBeGreaterThan(5);
  });

  it('a silent sensor and missed weeks are told', () => {
    const quiet = sampleSeason({ weeks: 5, whitefly: [0, 0, 1] });
    const result = forecast(quiet, onDay(40), { members });
    expect(codes(result)).toContain('sensor-silent');
    expect(codes(result)).toContain('missed-weeks:trialeurodes-vaporariorum');
  });

  it('a count far off is a surprise and does not break the members', () => {
    const odd = sampleSeason({ weeks: 6, whitefly: [0, 0, 0, 0, 0, 900] });
    const result = forecast(odd, onDay(42), { members });
    expect(whitefly(result).lastCountSurprise).toBeLessThan(0.05);
    expect(codes(result)).toContain('surprise:trialeurodes-vaporariorum');
    expect(whitefly(result).effectiveSampleSize).toBeGreaterThan(20);
  });

  it('two pests each have their forecast; aphids say that they are not proved', () => {
    const both = sampleSeason({ weeks: 5, whitefly: [0, 1, 0, 2, 2], aphids: [0, 0, 3, 5, 9] });
    const result = forecast(both, onDay(35), { members });
    expect(result.pests.map((one) => one.pest)).toEqual(['trialeurodes-vaporariorum', 'myzus-persicae']);
    expect(codes(result)).toContain('not-proved:myzus-persicae');
    expect(whitefly(result)).toEqual(
      whitefly(forecast(sampleSeason({ weeks: 5, whitefly: [0, 1, 0, 2, 2] }), onDay(35), { members })),
    );
  });

  it('a season of the south ends in its own autumn', () => {
    const base = sampleSeason({ weeks: 2, whitefly: [0, 0] });
    const south = {
      ...base,
      place: {
        ...base.place,
        latitudeDeg: -37,
        longitudeDeg: 175,
        timeZone: 'Pacific/Auckland',
        seasonEnd: '04-30',
      },
    };
    const result = forecast(south, onDay(14), { members: 40 });
    expect(whitefly(result).passesLimit.by.slice(0, 10)).toBe('2026-04-30');
  });

  it('says nothing that look.md forbids', () => {
    const seasons = [
      sampleSeason({ weeks: 0, whitefly: [] }),
      sampleSeason({ weeks: 6, whitefly: [0, 0, 0, 0, 0, 900] }),
    ];
    const texts = seasons.flatMap((season) =>
      forecast(season, onDay(43), { members: 40 }).doubts.map((d) => d.text),
    );
    expect(texts.length).toBeGreaterThan(3);
    for (const text of texts) {
      expect(text).not.toMatch(
        /risk level|alert|infestation|outbreak|kill|optimal|model|posterior|confidence|failed/i,
      );
    }
  });
});
