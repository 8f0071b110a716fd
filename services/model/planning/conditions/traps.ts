import { addDays, formatDay } from '../../climate/calendar.ts';
import type { EnemyId } from '../../season.ts';
import { groupOf } from '../waitingTimes.ts';
import type { ConditionRule } from './releaseCase.ts';

/** Yellow traps catch released wasps: down for at least a week. */
export const traps: ConditionRule = {
  id: 'traps',
  judge({ season, enemy, traits, on }) {
    const source =
      'extension practice: take yellow cards down for at least one week when parasitoids are released';
    const group = groupOf(enemy.id as EnemyId);
    const practice = 'common practice, no source';
    if (group === 'mite' || /larva/.test(traits.release?.form ?? '')) {
      return {
        verdict: 'holds',
        text: 'The yellow traps may stay: these friends cannot fly onto them.',
        source: practice,
      };
    }
    if (group === 'predator') {
      return {
        verdict: 'cannot-say',
        text: 'They fly: release them away from the traps. How many a trap catches is not known.',
        source: practice,
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
