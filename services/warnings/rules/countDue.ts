import { formatDay, localDay } from '../../model/index.ts';
import { endOfDay, type WarningRule } from './rule.ts';

/** The weekly count is due today or overdue; a resting house wants none. */
export const countDue: WarningRule = {
  id: 'count-due',
  raise({ place, issued, nowMs }) {
    const due = issued.advice.nextCountOn;
    const wanted = issued.advice.daysToKeep.some(({ verb }) => verb === 'Count');
    if (!wanted || due > localDay(nowMs, place.timeZone)) return [];
    return [
      {
        id: `count-due-${due}`,
        deadlineMs: endOfDay(due, place.timeZone),
        text: `Count the traps: due ${formatDay(due)}.`,
      },
    ];
  },
};
