import { addDays } from '../../climate/calendar.ts';
import { sine } from '../../climate/dayShape.ts';
import { verbFor } from '../grammar.ts';
import type { ConditionRule, ReleaseCase } from './releaseCase.ts';

/** Fewer warm hours a day than this and a released enemy mostly sits. Judgement, no source. */
const enoughHoursADay = 4;

/** Warm enough to hunt in the week after the release. */
export const warmth: ConditionRule = {
  id: 'warmth',
  judge(release) {
    const hours = huntingHoursADay(release);
    const threshold = release.traits.huntsAboveC;
    const source = `${release.enemy.name}, species page: hunts above ${threshold} °C`;
    if (hours === undefined) {
      return { verdict: 'cannot-say', text: 'No temperature is known for that week.', source };
    }
    const name = release.enemy.shortName;
    const text = `Above ${threshold} °C, where ${name} ${verbFor(name, 'hunts', 'hunt')}, for about ${Math.round(hours)} hours a day in the week from then.`;
    return { verdict: hours >= enoughHoursADay ? 'holds' : 'fails', text, source };
  },
};

/** Mean hours a day above the hunting threshold in the seven days from the release, by sine days. */
function huntingHoursADay(release: ReleaseCase): number | undefined {
  const until = addDays(release.on, 7);
  const days = release.forecast.temperature.outlook.filter((d) => d.day >= release.on && d.day < until);
  if (days.length === 0) return undefined;
  const shares = days.map((d) =>
    sine.shareAbove({ minC: d.minC.q50, maxC: d.maxC.q50 }, release.traits.huntsAboveC),
  );
  return (24 * shares.reduce((sum, share) => sum + share, 0)) / shares.length;
}
