/**
 * A small fixed part of the study of advice (docs/advice-scores.md), played again week by week. The stored numbers are
 * our own, written by `npm run study:advice -- --fixed`: they prove that nothing changed unseen.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { newTruth } from '../../simulators/truth.ts';
import { playAdvice } from '../../studies/adviceSeason.ts';
import { byTheCalendar, byTheRule, parcelOf } from '../../studies/advisers.ts';
import { type FixedAdvice, fixedAdviceSummary, fixedAdviceTasks } from '../../studies/fixedAdvice.ts';
import { cropWorth, harmByDays, harmOf } from '../../studies/loss.ts';
import { sampleSeason } from '../forecast/sample.ts';

const stored: FixedAdvice[] = JSON.parse(
  readFileSync(new URL('./fixed-advice.json', import.meta.url), 'utf8'),
);

describe('the fixed part of the study of advice', { timeout: 180_000 }, () => {
  const found = fixedAdviceSummary(fixedAdviceTasks.map((task) => playAdvice(task, () => 0)));

  it('gives the losses that are stored, within a tenth or 10 of the currency', () => {
    found.forEach((season, n) => {
      expect(season.trial).toBe(stored[n]!.trial);
      for (const of of ['never', 'rule', 'advice'] as const)
        expect(Math.abs(season[of] - stored[n]![of])).toBeLessThan(Math.max(0.1 * stored[n]![of], 10));
    });
  });

  it('buys nothing for a house without pests', () => {
    expect(found.find(({ trial }) => trial === 'no-pest')).toMatchObject({ never: 0, advice: 0, parcels: 0 });
  });
});

describe('harm', () => {
  const truth = (adults: number, days: number) => {
    const empty = newTruth({ startMs: 0, areaM2: 12, plants: 12, cardK: 2, wrongPerWeek: 0.1 });
    empty.days.whitefly.adults = new Array<number>(days).fill(adults);
    empty.days.whitefly.young = new Array<number>(days).fill(0);
    return empty;
  };

  it('is none for what a plant bears, and 1 - 1/e of the crop at the scale', () => {
    expect(harmOf(truth(30, 100))).toBe(0);
    expect(harmOf(truth(1030, 100))).toBeCloseTo(cropWorth * (1 - Math.exp(-1)), 6);
  });

  it('by the other law is a hundredth of the crop for each day above it, however many there are', () => {
    expect(harmByDays(truth(30, 100))).toBe(0);
    for (const adults of [31, 5000]) expect(harmByDays(truth(adults, 40))).toBeCloseTo(0.4 * cropWorth, 9);
    expect(harmByDays(truth(31, 140))).toBe(cropWorth);
  });
});

describe('growers with a habit', () => {
  const whitefly = (counts: number[]) => sampleSeason({ weeks: counts.length, whitefly: counts });
  const now = (season: ReturnType<typeof whitefly>) => Date.parse(season.trapCounts.at(-1)!.time);

  it('the rule buys after two days with insects and a pooled catch of one, not after one', () => {
    const often = whitefly([0, 0, 0, 2, 3]);
    const once = whitefly([0, 0, 0, 0, 3]);
    expect(byTheRule(often, now(often)).parcels).toMatchObject([{ enemy: 'encarsia-formosa' }]);
    expect(byTheRule(once, now(once)).parcels).toEqual([]);
  });

  it('buys in whole pieces, at least one', () => {
    // Orius comes 500 to a bottle, Encarsia 60 to a card (species records): 96 are one bottle, 72 one card, 240 four.
    const parcel = (areaM2: number, enemy: 'orius-laevigatus' | 'encarsia-formosa', perM2: number) =>
      parcelOf({ place: { areaM2 } }, { enemy, perM2 }).number;
    expect(parcel(12, 'orius-laevigatus', 8)).toBe(500);
    expect(parcel(12, 'encarsia-formosa', 6)).toBe(60);
    expect(parcel(12, 'encarsia-formosa', 20)).toBe(240);
  });

  it('the calendar buys every second week, whatever is counted', () => {
    const buys = [4, 5, 6].map((week) => {
      const season = whitefly(new Array<number>(week).fill(0));
      return byTheCalendar()(season, now(season)).parcels.length;
    });
    expect(buys.map((n) => n > 0)).toEqual([true, false, true]);
  });
});
