import { addDays, formatDay } from '../../climate/calendar.ts';
import type { EnemyId } from '../../season.ts';
import { groupOf } from '../waitingTimes.ts';
import type { ConditionRule } from './releaseCase.ts';

/** Yellow traps catch released wasps: down for at least a week. */
export const traps: ConditionRule = {
  id: 'traps',
  judge({ season, enemy, on }) {
    const source =
      'extension practice: take yellow cards down for at least one week when parasitoids are released';
    if (groupOf[enemy.id as EnemyId] !== 'wasp') {
      return {
        verdict: 'holds',
        text: 'Traps may stay: these do not fly to them.',
        source: 'common practice, no source',
      };
    }
    if (season.traps.every((t) => t.takenDownAt !== undefined)) {
      return { verdict: 'holds', text: 'No trap hangs.', source };
    }
    return {
      verdict: 'cannot-say',
      text: `To do: take the traps down on the day, hang them again ${formatDay(addDays(on, 7))}.`,
      source,
    };
  },
};
