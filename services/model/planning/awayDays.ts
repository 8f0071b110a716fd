/** Days on which nobody is at the place, by its `awayDays`: local days, both ends of a span included. */
import { addDays } from '../climate/calendar.ts';
import type { Place } from '../season.ts';

type Away = Pick<Place, 'awayDays'>;

const spanOn = ({ awayDays = [] }: Away, day: string) =>
  awayDays.find(({ from, to }) => from <= day && day <= to);

/** The day itself, or the first one back from being away. */
export function firstDayHome(place: Away, day: string): string {
  const span = spanOn(place, day);
  return span ? firstDayHome(place, addDays(span.to, 1)) : day;
}

/** The day itself, or the last one before leaving. */
export function lastDayHome(place: Away, day: string): string {
  const span = spanOn(place, day);
  return span ? lastDayHome(place, addDays(span.from, -1)) : day;
}
