/** Counts by day in the unit of the forecast: on one whole card in seven days, or leaves with any of ten. */
import { type Counts, infestedOf, middleOf, shownOf, type TrapWindow } from '../observation/counts.ts';
import { isCountedOnLeaves, type PestId, type Season } from '../season.ts';
import { dayMs } from '../units.ts';

/** All that was counted of a pest on one day. */
export interface Observed {
  /** The last count of the day. */
  timeMs: number;
  /** One number a card or leaf check. */
  counts: number[];
}

/** Cards that hung for longer or shorter are no week: they teach the forecast, but are not held against it. */
const shortestDays = 4;
const longestDays = 10;
/** A round missed makes two weeks: reckoned to one, a grower still wants to see it held. */
export const longestHeldDays = 17;
/** Counts closer than this are one round. */
const roundMs = dayMs / 2;

/** Rounds of counts of a pest, in time, each reckoned to seven days. */
export function observedRounds(
  season: Counts & Pick<Season, 'place'>,
  pest: PestId,
  mostDays = longestDays,
): Observed[] {
  const shown = shownOf(season, pest, 0);
  const all = isCountedOnLeaves(season.place, pest)
    ? shown.leaves.flatMap((look) => {
        const infested = infestedOf(look);
        return infested === undefined
          ? []
          : [{ timeMs: look.timeMs, count: Math.round((10 * infested) / look.leaves) }];
      })
    : shown.traps.flatMap((window) => {
        const count = weekly(window, mostDays);
        return count === undefined ? [] : [{ timeMs: window.timeMs, count }];
      });
  const rounds: Observed[] = [];
  for (const { timeMs, count } of all.sort((a, b) => a.timeMs - b.timeMs)) {
    const last = rounds.at(-1);
    if (last && timeMs - last.timeMs < roundMs) {
      last.timeMs = timeMs;
      last.counts.push(count);
    } else rounds.push({ timeMs, counts: [count] });
  }
  return rounds;
}

function weekly(window: TrapWindow, mostDays: number): number | undefined {
  const days = window.toDay - window.fromDay;
  if (days < shortestDays || days > mostDays) return undefined;
  return Math.round((7 * middleOf(window)) / (days * window.countedFraction));
}
