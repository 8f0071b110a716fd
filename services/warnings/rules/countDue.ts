import {
  addDays,
  firstDayHome,
  formatDay,
  isLeavesOnly,
  localDay,
  startOfLocalDay,
} from '../../model/index.ts';
import type { Warning } from '../../store/store.ts';
import { done, endOfDay, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

const weekDays = 7;

/** The weekly count is due today or overdue; a resting house wants none, and away from home nobody can. */
export const countDue: WarningRule = {
  id: 'count-due',
  matters(facts) {
    const { place } = facts.season;
    const count = nextCount(facts);
    if (count === undefined) return [];
    const { last, due, verb } = count;
    const today = localDay(facts.nowMs, place.timeZone);
    const awayNow = firstDayHome(place, today) !== today;
    const home = firstDayHome(place, awayNow && due < today ? today : due);
    const when = home <= today || home === due ? '' : `; you are back ${formatDay(home)}`;
    const leaves = isLeavesOnly(place) ? '' : ', look under ten leaves';
    return [
      {
        id: idOf(last),
        // One that was missed at home stays open while away, with the day back as its end.
        opensMs: startOfLocalDay(firstDayHome(place, due), place.timeZone),
        deadlineMs: endOfDay(home, place.timeZone),
        text: last === undefined ? `${verb} for the first time.` : `${verb}: due ${formatDay(due)}${when}.`,
        reason:
          last === undefined
            ? 'Without a count nothing can be said of the pests.'
            : `The last count was ${formatDay(last)}; the ranges widen with each week without one.`,
        ends: 'Ends when a count is entered.',
        ...(last !== undefined && {
          days: { uid: `count/${last}`, from: home, to: home, title: `${verb}${leaves}` },
        }),
      },
    ];
  },
  ending: ({ id }, facts) =>
    id === idOf(lastCountDay(facts))
      ? withdrawn('The house rests: no count is wanted.')
      : done('It was counted.'),
};

/** The letter has named the day: only a count that is overdue wants a message of its own. */
export const standsInLetter = ({ id, deadlineMs }: Warning, nowMs: number): boolean =>
  id.startsWith(idOf('')) && id !== idOf(undefined) && nowMs <= deadlineMs;

const idOf = (last: string | undefined) => `count-due-after-${last ?? 'none'}`;

/** The next count: the day it is due, and of the last one; undefined while the house rests. */
export function nextCount(facts: WarningFacts): { last?: string; due: string; verb: string } | undefined {
  if (!facts.issued.advice.daysToKeep.some(({ verb }) => verb === 'Count')) return undefined;
  const { place } = facts.season;
  const verb = isLeavesOnly(place) ? 'Look under ten leaves' : 'Count the traps';
  const last = lastCountDay(facts);
  return last === undefined
    ? { due: localDay(facts.nowMs, place.timeZone), verb }
    : { last, due: addDays(last, weekDays), verb };
}

/** Day of the last trap count or leaf check; a lost card is no count. */
export function lastCountDay({ season, nowMs }: WarningFacts): string | undefined {
  const counts = season.trapCounts.filter(({ card }) => card !== 'lost' && card !== 'down');
  return [...counts, ...season.leafChecks]
    .filter(({ time }) => Date.parse(time) <= nowMs)
    .map(({ time }) => localDay(Date.parse(time), season.place.timeZone))
    .sort()
    .at(-1);
}
