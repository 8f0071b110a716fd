/** When to wash: somebody has to be at home, and leaves bear a wash only so often. */
import { addDays, localDay } from '../climate/calendar.ts';
import type { Season } from '../season.ts';
import { firstDayHome } from './awayDays.ts';

/** As the advice to wash says: again in five days. Common practice, no source. */
const washAgainAfterDays = 5;

/** The first day from today on with somebody at home, and five days after the last wash or spray. */
export function washDay({ place, treatments }: Season, asOfMs: number): string {
  const today = localDay(asOfMs, place.timeZone);
  const again = treatments.map(({ time }) =>
    addDays(localDay(Date.parse(time), place.timeZone), washAgainAfterDays),
  );
  return firstDayHome(place, [today, ...again].sort().at(-1)!);
}
