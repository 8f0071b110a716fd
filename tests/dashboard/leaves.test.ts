/** Pests in words and figures: where each is seen, and counts of leaves. */
import { describe, expect, it } from 'vitest';
import { countHistory, historyOf, leafHistory } from '../../dashboard/figures/countWeeks.ts';
import type { ForecastFigureData } from '../../dashboard/figures/forecastData.ts';
import { forecastFigure } from '../../dashboard/figures/forecastFigure.ts';
import { forecastMarks } from '../../dashboard/figures/forecastMarks.ts';
import { forecastAloud } from '../../dashboard/figures/forecastWords.ts';
import { type Palette, paletteNames } from '../../dashboard/figures/palette.ts';
import { leafVerdict } from '../../dashboard/pages/round/verdict.ts';
import { otherPestWords } from '../../dashboard/pages/week/captions.ts';
import {
  figureTitle,
  offeredPests,
  pestGroups,
  pestWords,
  togglePest,
  unitOf,
} from '../../dashboard/words/pests.ts';
import { isCountedOnLeaves, type LeafCheck, lookAlikes, pestIds } from '../../services/model/index.ts';
import { seenAs } from '../../services/model/species/signs.ts';
import { forecast } from '../pages/fixtureSeason.ts';

const now = Date.parse('2026-05-13T08:00:00Z');
const dayMs = 86_400_000;
const iso = (daysAgo: number) => new Date(now - daysAgo * dayMs).toISOString();
const check = (daysAgo: number, leaves: number, seen: LeafCheck['seen']): LeafCheck => ({
  id: `c${daysAgo}`,
  time: iso(daysAgo),
  leaves,
  seen,
});
const mites = (infestedLeaves: number) => [{ kind: 'spider-mite' as const, infestedLeaves }];

describe('where pests are seen', () => {
  it.each(pestIds)('%s stands in the group of its record', (pest) => {
    expect(pestWords[pest].group).toBe(seenAs(pest).trap ?? 'leaves');
    for (const kind of ['glasshouse', 'room', 'outdoors'] as const) {
      expect(unitOf(kind, pest)).toBe(isCountedOnLeaves({ kind }, pest) ? 'ten-leaves' : 'trap-week');
    }
  });

  it('of those that look alike one is chosen, the last', () => {
    for (const { pests } of lookAlikes) {
      const [one, other] = [pests[0]!, pests[1]!];
      expect(togglePest([one, 'frankliniella-occidentalis'], other)).toEqual([
        'frankliniella-occidentalis',
        other,
      ]);
    }
    expect(togglePest(['tetranychus-urticae'], 'planococcus-citri')).toEqual([
      'tetranychus-urticae',
      'planococcus-citri',
    ]);
    expect(togglePest(['tetranychus-urticae'], 'tetranychus-urticae')).toEqual([]);
  });

  it('every pest is offered once; those of the open outdoors, or where they are followed already', () => {
    const all = (outdoors: boolean) => pestGroups.flatMap(({ group }) => offeredPests(group, outdoors, []));
    expect(all(true).toSorted()).toEqual([...pestIds].sort());
    expect(pestIds.filter((pest) => !all(false).includes(pest))).toEqual([
      'macrosiphum-rosae',
      'myzus-cerasi',
    ]);
    expect(offeredPests('aphid', false, ['myzus-cerasi'])).toContain('myzus-cerasi');
  });
});

describe('leaf checks by week', () => {
  it('are leaves with any, of ten, whatever was looked under', () => {
    const { weeks } = leafHistory([check(7, 20, mites(3)), check(0, 5, mites(4))], 'spider-mite', 'UTC');
    expect(weeks.map((week) => week.middle)).toEqual([1.5, 8]);
  });

  it('a total alone is somewhere between one leaf and as many as it may sit on', () => {
    const totals = (total: number) => [{ kind: 'spider-mite' as const, total }];
    const { weeks } = leafHistory([check(7, 10, totals(0)), check(0, 10, totals(4))], 'spider-mite', 'UTC');
    expect(weeks.map(({ low, high }) => [low, high])).toEqual([
      [0, 0],
      [1, 4],
    ]);
  });

  it('a week without a look at this kind is a gap, never a zero', () => {
    const checks = [
      check(21, 10, mites(1)),
      check(7, 10, [{ kind: 'aphid', infestedLeaves: 4 }]),
      check(0, 10, mites(2)),
    ];
    const { weeks, gaps } = leafHistory(checks, 'spider-mite', 'UTC');
    expect(weeks.map((week) => week.middle)).toEqual([1, 2]);
    expect(gaps).toHaveLength(2);
  });

  it('a pest has the history of its own unit', () => {
    const leaves = [check(0, 10, mites(2))];
    const counted = { unit: 'ten-leaves', kind: 'spider-mite', limit: 3 } as const;
    expect(historyOf({ traps: [], leaves, timeZone: 'UTC' }, counted)).toEqual(
      leafHistory(leaves, 'spider-mite', 'UTC'),
    );
    const onTraps = { unit: 'trap-week', kind: 'thrips', limit: 10 } as const;
    expect(historyOf({ traps: [], leaves, timeZone: 'UTC' }, onTraps)).toEqual(
      countHistory([], 'thrips', 'UTC'),
    );
  });
});

const range = (q50: number) => ({
  q025: Math.max(0, q50 - 4),
  q10: Math.max(0, q50 - 3),
  q25: Math.max(0, q50 - 1),
  q50,
  q75: Math.min(10, q50 + 1),
  q90: Math.min(10, q50 + 3),
  q975: Math.min(10, q50 + 4),
});
const week = (index: number, q50: number) => ({
  end: iso(-7 * index),
  count: range(q50),
  adultsPerM2: range(q50),
  youngPerM2: range(q50),
  probabilityOverLimit: 0.5,
});
const figure: ForecastFigureData = {
  asOfMs: now,
  timeZone: 'UTC',
  unit: 'ten-leaves',
  limit: 3,
  history: leafHistory([check(7, 10, mites(1)), check(0, 10, mites(3))], 'spider-mite', 'UTC'),
  leave: [week(1, 4), week(2, 5), week(3, 7)],
  pastWeeks: 4,
  aheadWeeks: 5,
};

describe('the figure of leaves', () => {
  const palette = Object.fromEntries(paletteNames.map((name) => [name, `#${name}`])) as unknown as Palette;

  it('runs evenly from none to ten of ten, with nothing above it', () => {
    const y = forecastFigure(figure, palette).options?.scales?.y as { min: number; max: number };
    expect([y.min, y.max]).toEqual([0, 10]);
    const marks = forecastMarks(figure, palette);
    expect(marks.find((mark) => mark.kind === 'glazing-bar')).toMatchObject({ y: 3, text: 'your limit, 3' });
    expect(marks.some((mark) => mark.kind === 'off-scale')).toBe(false);
  });

  it('is read aloud in leaves', () => {
    expect(forecastAloud(figure)).toBe(
      'From 1 to 3 of ten leaves in one week. If left, about 7 on 3 June, half of the time 6 to 8.',
    );
    const none = leafHistory([check(7, 10, mites(0)), check(0, 10, mites(0))], 'spider-mite', 'UTC');
    expect(forecastAloud({ ...figure, history: none, leave: [] })).toBe('None seen in one week.');
  });

  it('has its unit in its title', () => {
    expect(figureTitle('tetranychus-urticae', 'ten-leaves')).toBe('Spider mites: leaves with any, of ten');
    expect(figureTitle('frankliniella-occidentalis', 'trap-week')).toBe('Thrips on a trap in a week');
  });
});

describe('a pest on leaves beside the others', () => {
  const [whitefly] = forecast.pests;
  const pest = {
    ...whitefly!,
    pest: 'tetranychus-urticae' as const,
    counted: { unit: 'ten-leaves', kind: 'spider-mite', limit: 3 } as const,
    weeks: [week(1, 4)],
  };

  it('is told in leaves of ten', () => {
    const last = { endMs: 0, middle: 2, low: 2, high: 2, part: false };
    expect(otherPestWords(pest, last, true)).toMatch(/^last count 2 of ten leaves; over your limit of 3: /);
  });

  it('ten leaves looked under are held against what was expected, other numbers are not', () => {
    const outcome = { pests: [pest] };
    const draft = (leaves: number, infested: number) => ({
      leaves,
      infested: { 'spider-mite': infested },
    });
    expect(leafVerdict(draft(10, 5), outcome)).toBe('Spider mites on 5 of ten leaves; we expected 1 to 7.');
    expect(leafVerdict(draft(10, 10), outcome)).toContain('far more than the 1 to 7 we expected');
    expect(leafVerdict(draft(20, 5), outcome)).toBe('');
    expect(leafVerdict({ leaves: 10, infested: { aphid: 3 } }, outcome)).toBe('');
  });
});
