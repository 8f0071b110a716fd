/** When to wash: somebody has to be at home, and leaves bear a wash only so often. */
import { addDays, localDay } from '../climate/calendar.ts';
import type { Season } from '../season.ts';
import { firstDayHome } from './awayDays.ts';

/** Common practice, no source. The sentence that tells of two washes says "five days". */
const againAfterDays = 5;

/** The first day from today on with somebody at home, and five days after whatever was washed or sprayed last. */
export function washDay(season: Season, asOfMs: number): string {
  const today = localDay(asOfMs, season.place.timeZone);
  return firstDayHome(season.place, [today, againFrom(season)].sort().at(-1)!);
}

export const canWashToday = (season: Season, asOfMs: number): boolean =>
  washDay(season, asOfMs) === localDay(asOfMs, season.place.timeZone);

/** Whether the wash to come is the second of two. */
export const isWashedLately = (season: Season, asOfMs: number): boolean =>
  againFrom(season) > localDay(asOfMs, season.place.timeZone);

/** Five days after the last treatment; empty before the first. */
const againFrom = ({ place, treatments }: Season): string =>
  treatments
    .map(({ time }) => addDays(localDay(Date.parse(time), place.timeZone), againAfterDays))
    .sort()
    .at(-1) ?? '';
