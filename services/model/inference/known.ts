/** What the members given the counts of a day hang on, and nothing later: the same again gives the same members. */
import type { CountDay, Problem } from './member.ts';

export interface Known {
  day: number;
  /** Numbers and counts, as JSON. */
  facts: string;
  /** By hour or day, from the start to the end of the day. */
  series: readonly ArrayLike<number>[];
}

/** All that members read of a problem up to the end of a count day. */
export function knownUpTo(
  { world, layout, shown, hostFactor }: Problem,
  { day }: CountDay,
  drawn: { members: number; seed: number },
): Known {
  const { startMs, areaM2, path, pests, enemies, treatments, ants } = world;
  const days = day + 1;
  return {
    day,
    facts: JSON.stringify({
      startMs,
      areaM2,
      longestDayH: path.longestDayH,
      hostFactor,
      pests: pests.map(({ id }) => id),
      layout,
      drawn,
      traps: shown.traps.filter(({ toDay }) => toDay < days),
      leaves: shown.leaves.filter((look) => look.day < days),
      treatments: treatments.slice(0, days).flatMap((taken, at) => (taken ? [{ at, taken }] : [])),
    }),
    series: [
      path.hourlyC.subarray(0, 24 * days),
      path.daylight.subarray(0, 24 * days),
      ...[path.dayLengthH, path.deficitKPa].map((each) => each?.subarray(0, days) ?? []),
      ants.subarray(0, days),
      ...pests.map(({ cardsPerM2 }) => cardsPerM2?.subarray(0, days) ?? []),
      ...enemies.flatMap(({ at }) =>
        [at?.adultsAdded, at?.youngAdded, at?.youngAge].map((each) => putIn(each, days)),
      ),
    ],
  };
}

/** Nothing put in yet and never to be is the same. */
const putIn = (added: Float64Array | undefined, days: number): ArrayLike<number> =>
  added?.subarray(0, days).some((number) => number > 0) ? added.subarray(0, days) : [];

export const isSame = (a: Known, b: Known): boolean =>
  a.facts === b.facts &&
  a.series.length === b.series.length &&
  a.series.every((series, i) => isEqual(series, b.series[i]!));

function isEqual(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
