/** Pests that never come to a trap: learned from leaf checks alone, forecast in leaves of ten. */
import { describe, expect, it } from 'vitest';
import { fit as fitSeason, forecast } from '../../services/model/forecast.ts';
import { type LeafCheck, type LeafKind, type Season, seasonSchema } from '../../services/model/season.ts';
import { onDay, sampleSeason } from './sample.ts';

const members = 120;

function miteSeason(
  infested: readonly number[],
  changes: Partial<Season> = {},
  kind: LeafKind = 'spider-mite',
) {
  const base = sampleSeason({ weeks: 6, whitefly: [] });
  const leafChecks: LeafCheck[] = infested.map((infestedLeaves, i) => ({
    id: `look-${i}`,
    time: onDay((i + 1) * 7 - 0.5),
    leaves: 10,
    seen: [{ kind, infestedLeaves }],
  }));
  const place = { ...base.place, pests: ['tetranychus-urticae'], limits: {} };
  return seasonSchema.parse({ ...base, place, leafChecks, ...changes });
}
const mites = (season: Season) => forecast(season, onDay(42), { members }).pests[0]!;

describe('a pest seen only under leaves', () => {
  const rising = mites(miteSeason([0, 0, 1, 2, 4, 5]));

  it('is counted in leaves of ten, with a limit of its own', () => {
    expect(rising.counted).toEqual({ unit: 'ten-leaves', kind: 'spider-mite', limit: 3 });
    const limits = { 'tetranychus-urticae': 7 };
    const own = miteSeason([0, 0, 1], {});
    expect(mites({ ...own, place: { ...own.place, limits } }).counted.limit).toBe(7);
  });

  it('every range is leaves of ten, in order', () => {
    for (const { count } of [...rising.past, ...rising.weeks]) {
      const { q025, q10, q25, q50, q75, q90, q975 } = count;
      const all = [q025, q10, q25, q50, q75, q90, q975];
      expect(all).toEqual([...all].sort((a, b) => a - b));
      expect(q025).toBeGreaterThanOrEqual(0);
      expect(q975).toBeLessThanOrEqual(10);
    }
  });

  it('rising checks pass the limit, clean leaves seldom do', () => {
    const clean = mites(miteSeason([0, 0, 0, 0, 0, 0]));
    expect(rising.passesLimit.probability).toBeGreaterThan(0.8);
    expect(clean.passesLimit.probability).toBeLessThan(rising.passesLimit.probability);
    expect(clean.weeks[0]!.count.q50).toBeLessThan(rising.weeks[0]!.count.q50);
    expect(clean.probabilityPresent).toBeLessThan(rising.probabilityPresent);
  });

  it('what hangs on traps changes nothing', () => {
    const caught = sampleSeason({ weeks: 6, whitefly: [3, 9, 80, 200, 300, 400] }).trapCounts;
    expect(mites(miteSeason([0, 1, 2, 2], { trapCounts: caught })).weeks).toEqual(
      mites(miteSeason([0, 1, 2, 2])).weeks,
    );
  });

  it('another kind under the leaves is not it', () => {
    const none = mites(miteSeason([])).weeks;
    expect(mites(miteSeason([0, 4, 9], {}, 'thrips')).weeks).toEqual(none);
  });

  it('a check far off is a surprise', () => {
    expect(rising.lastCountSurprise).toBeGreaterThan(0.05);
    expect(mites(miteSeason([0, 0, 0, 0, 0, 10])).lastCountSurprise).toBeLessThan(0.05);
  });

  it('outdoors every pest is: no sticky trap hangs in the open', () => {
    const base = miteSeason([2, 4], {}, 'aphid');
    const roses = { ...base.place, kind: 'outdoors' as const, pests: ['macrosiphum-rosae' as const] };
    const outdoors = mites({ ...base, place: roses });
    expect(outdoors.counted).toEqual({ unit: 'ten-leaves', kind: 'aphid', limit: 3 });
    expect(outdoors.weeks.every(({ count }) => count.q975 <= 10)).toBe(true);
  });

  it('its doubts speak of leaves, not of traps', () => {
    const { doubts } = forecast(miteSeason([0, 0]), onDay(15), { members: 40 });
    const own = doubts.filter(({ code }) => code.endsWith('tetranychus-urticae')).map(({ text }) => text);
    expect(own).toContain('Only 2 leaf checks of spider mites so far: ranges are wide.');
    expect(own.join(' ')).toMatch(/Clean leaves make them unlikely/);
    expect(own.join(' ')).not.toMatch(/trap/);
  });

  it('persimilis mites bring it down and leave the past alone', () => {
    const fitted = fitSeason(miteSeason([0, 0, 1, 2, 4, 5]), onDay(42), { members });
    const left = fitted.forecast.pests[0]!;
    const released = fitted.withMore('tetranychus-urticae', {
      releases: [
        {
          id: 'r',
          enemy: 'phytoseiulus-persimilis',
          form: 'adults and nymphs in a tube',
          number: 500,
          time: onDay(43),
          aliveShare: 1,
        },
      ],
    });
    expect(released.weeks[7]!.count.q50).toBeLessThan(left.weeks[7]!.count.q50);
  });
});
