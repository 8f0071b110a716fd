/** How few possible seasons went, week by week from the first count on: as it was, or with something left out. */
import { seenYoung } from '../observation/view.ts';
import type { World } from '../population/world.ts';
import { instantOf } from './dates.ts';
import { evenly, fewMembers } from './overLimit.ts';
import { expectedCount, type Summary } from './summary.ts';

export interface Courses {
  /** Ends of the weeks, oldest first; a week ends now, the last at the end of the look ahead. */
  ends: readonly string[];
  /** Expected count of each week, by possible season: all alike in weight, in the same order in every world. */
  counts: readonly (readonly number[])[];
  /** What these counts stand for, likewise: of a card the same, of ten leaves insects a m2, as full leaves hide how many. */
  numbers: readonly (readonly number[])[];
}

/** In the unit of the pest: what a card of that week, or ten leaves at its end, would be expected to show. */
export function courses(summary: Summary, world: World): Courses {
  const { ensemble, startMs, today, lastDay, weeksPast, coursesIn } = summary;
  const weeks = Math.floor((lastDay - today) / 7);
  const days = Array.from({ length: weeksPast + weeks }, (_, i) => today + 7 * (i + 1 - weeksPast));
  const courseOf = coursesIn(world, Math.floor(lastDay) + 1);
  const seasons = evenly(ensemble.weights, fewMembers).map((slot) => {
    const course = courseOf(slot);
    const counts = days.map((day) => expectedCount({ summary, world }, course, slot, day));
    const onCards = summary.counted.unit === 'trap-week';
    return {
      counts,
      numbers: onCards ? counts : days.map((day) => seenYoung(world, course, Math.floor(day))),
    };
  });
  return {
    ends: days.map((day) => instantOf(startMs, day)),
    counts: seasons.map(({ counts }) => counts),
    numbers: seasons.map(({ numbers }) => numbers),
  };
}
