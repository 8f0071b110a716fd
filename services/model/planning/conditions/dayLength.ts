import { dayLengthHours, dayOfYear } from '../../climate/dayLength.ts';
import { verbFor } from '../grammar.ts';
import type { ConditionRule } from './releaseCase.ts';

/** Days long enough that the enemy does not go to rest. */
export const dayLength: ConditionRule = {
  id: 'day-length',
  judge({ season, enemy, traits, on }) {
    const limit = traits.restsBelowDayLengthH;
    const source = `${enemy.name}, species page`;
    if (limit === undefined) {
      return {
        verdict: 'holds',
        text: `Short days do not stop ${enemy.shortName}, as far as is known.`,
        source,
      };
    }
    const hours = dayLengthHours({
      latitudeDeg: season.place.latitudeDeg,
      dayOfYear: dayOfYear(Date.parse(on)),
    });
    return {
      verdict: hours >= limit ? 'holds' : 'fails',
      text: `Days last ${hours.toFixed(1)} hours then; ${enemy.shortName} ${verbFor(enemy.shortName, 'rests', 'rest')} below ${limit} hours.`,
      source,
    };
  },
};
