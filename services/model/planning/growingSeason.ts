/** The growing season of a place, of which only the last day is known. */
import { addDays, daysBetween, localDay } from '../climate/calendar.ts';
import type { Place } from '../season.ts';

/** A house rests after its season until the year turns, but no longer than this. Judgement. */
const longestRestDays = 92;

/** Last day of the season that runs on `day`, or that it rests after. */
export function endOfSeason(place: Place, day: string): string {
  const year = Number(day.slice(0, 4));
  const ends = [year - 1, year].map((endYear) => `${endYear}-${place.seasonEnd}`);
  return ends.find((end) => day < restOver(place, end)) ?? `${year + 1}-${place.seasonEnd}`;
}

/** Days from now to the end of the season in the place's own calendar; negative while it rests. */
export function daysLeft(place: Place, asOfMs: number): number {
  const today = localDay(asOfMs, place.timeZone);
  return daysBetween(today, endOfSeason(place, today));
}

/** First day of the next season: 1 January, south of the equator 1 July, unless the rest is over before. */
function restOver(place: Place, end: string): string {
  const turn = place.latitudeDeg < 0 ? '07-01' : '01-01';
  const year = Number(end.slice(0, 4)) + (end.slice(5) < turn ? 0 : 1);
  const [first = ''] = [`${year}-${turn}`, addDays(end, longestRestDays)].sort();
  return first;
}
