import { capital } from '../grammar.ts';
import type { ConditionRule } from './releaseCase.ts';

/** Whether the law of the country allows the release; the tool does not decide, it says whom to ask. */
export const legal: ConditionRule = {
  id: 'legal',
  judge({ season, enemy }) {
    const ask = `${capital(enemy.shortName)} may need a licence where you live: ask your supplier and your authority.`;
    if (season.place.country === 'GB') {
      return {
        verdict: 'cannot-say',
        text: `${ask} In Great Britain this holds for glasshouses too.`,
        source: 'Wildlife and Countryside Act 1981, section 14',
      };
    }
    return {
      verdict: 'cannot-say',
      text: `${ask} Which friends may be released in your country is not known here: ask before you order.`,
      source: 'the law of the country',
    };
  },
};
