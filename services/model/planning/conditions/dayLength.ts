import { addDays } from '../../climate/calendar.ts';
import { dayLengthHours, dayOfYear } from '../../climate/dayLength.ts';
import { verbFor } from '../grammar.ts';
import type { ConditionRule, ReleaseCase } from './releaseCase.ts';

/** Days long enough, or warm enough, that the enemy does not go to rest. */
export const dayLength: ConditionRule = {
  id: 'day-length',
  judge(release) {
    const { season, enemy, traits, on } = release;
    const source = `${enemy.name}, species page`;
    if (traits.rests === undefined) {
      return {
        verdict: 'holds',
        text: `Short days do not stop ${enemy.shortName}, as far as is known.`,
        source,
      };
    }
    const { belowDayLengthH, belowC } = traits.rests;
    const hours = dayLengthHours({
      latitudeDeg: season.place.latitudeDeg,
      dayOfYear: dayOfYear(Date.parse(on)),
    });
    const rests = verbFor(enemy.shortName, 'rests', 'rest');
    const cool = belowC === undefined ? '' : ` in means below ${belowC} °C`;
    const text = `Days last ${hours.toFixed(1)} hours then; ${enemy.shortName} ${rests} below ${belowDayLengthH} hours${cool}.`;
    if (hours >= belowDayLengthH) return { verdict: 'holds', text, source };
    if (belowC === undefined) return { verdict: 'fails', text, source };
    const meanC = meanAhead(release);
    if (meanC === undefined) return { verdict: 'cannot-say', text, source };
    const warmth = `The week from then has a mean of about ${Math.round(meanC)} °C.`;
    return { verdict: meanC >= belowC ? 'holds' : 'fails', text: `${text} ${warmth}`, source };
  },
};

/** Mean temperature of the seven days from the release, as expected. */
function meanAhead({ forecast, on }: ReleaseCase): number | undefined {
  const until = addDays(on, 7);
  const days = forecast.temperature.outlook.filter(({ day }) => day >= on && day < until);
  if (days.length === 0) return undefined;
  return days.reduce((sum, { meanC }) => sum + meanC.q50, 0) / days.length;
}
