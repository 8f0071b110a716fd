import { addDays, formatDay, isLeavesOnly, localDay, startOfLocalDay } from '../../model/index.ts';
import type { Warning } from '../../store/store.ts';
import { done, endOfDay, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

const weekDays = 7;

/** The weekly count is due today or overdue; a resting house wants none. */
export const countDue: WarningRule = {
  id: 'count-due',
  matters(facts) {
    const { place } = facts.season;
    if (!facts.issued.advice.daysToKeep.some(({ verb }) => verb === 'Count')) return [];
    const last = lastCountDay(facts);
    const [verb, leaves] = isLeavesOnly(place)
      ? ['Look under ten leaves', '']
      : ['Count the traps', ', look under ten leaves'];
    const due = last === undefined ? localDay(facts.nowMs, place.timeZone) : addDays(last, weekDays);
    return [
      {
        id: idOf(last),
        opensMs: startOfLocalDay(due, place.timeZone),
        deadlineMs: endOfDay(due, place.timeZone),
        text: last === undefined ? `${verb} for the first time.` : `${verb}: due ${formatDay(due)}.`,
        reason:
          last === undefined
            ? 'Without a count nothing can be said of the pests.'
            : `The last count was ${formatDay(last)}; the ranges widen with each week without one.`,
        ends: 'When a count is entered.',
        ...(last !== undefined && {
          days: { uid: `count/${last}`, from: due, to: due, title: `${verb}${leaves}` },
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

/** Day of the last trap count or leaf check; a lost card is no count. */
function lastCountDay({ season, nowMs }: WarningFacts): string | undefined {
  const counts = season.trapCounts.filter(({ card }) => card !== 'lost' && card !== 'down');
  return [...counts, ...season.leafChecks]
    .filter(({ time }) => Date.parse(time) <= nowMs)
    .map(({ time }) => localDay(Date.parse(time), season.place.timeZone))
    .sort()
    .at(-1);
}
