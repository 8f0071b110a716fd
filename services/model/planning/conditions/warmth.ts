import { addDays } from '../../climate/calendar.ts';
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
    const text = `Above ${threshold} °C, where ${release.enemy.shortName} hunt, for about ${Math.round(hours)} hours a day in the week from then.`;
    return { verdict: hours >= enoughHoursADay ? 'holds' : 'fails', text, source };
  },
};

/** Mean hours a day above the hunting threshold in the seven days from the release, by sine days. */
export function huntingHoursADay(release: ReleaseCase): number | undefined {
  const until = addDays(release.on, 7);
  const days = release.forecast.temperature.outlook.filter((d) => d.day >= release.on && d.day < until);
  if (days.length === 0) return undefined;
  const hours = days.map((d) => hoursAbove(d.minC.q50, d.maxC.q50, release.traits.huntsAboveC));
  return hours.reduce((sum, h) => sum + h, 0) / hours.length;
}

/** Hours of a sine-shaped day above a threshold; closed form of the daily curve (Arnold 1960). */
export function hoursAbove(minC: number, maxC: number, thresholdC: number): number {
  if (minC >= thresholdC) return 24;
  if (maxC <= thresholdC) return 0;
  const angle = Math.asin((2 * thresholdC - maxC - minC) / (maxC - minC));
  return 12 - (24 / Math.PI) * angle;
}
