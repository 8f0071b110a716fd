/** What to do with a parcel that comes: look, tell the supplier in time, and how long it may wait. */
import { addDays, dayWords } from './dates.ts';

/**
 * The same day, those sent with food a few days: an article of the trade on parcels of natural enemies (shared references,
 * monitoring, S90). About two days at most, no sun, no kitchen refrigerator: common practice, no source.
 */
const keeping =
  'Set them out that day. If that cannot be: those sent with food keep a few days, most others two days at most, in shade and cool, never in sun or a kitchen refrigerator.';

/** The day after it comes is the last to complain on: common practice, no source. */
export function parcelCare(expectedOn: string | undefined): string {
  const by = expectedOn === undefined ? 'by the next day' : `by ${dayWords(addDays(expectedOn, 1))}`;
  return `When the parcel comes: look at it the same day, keep a few in a jar. If hardly anything moves, tell the supplier ${by}. ${keeping}`;
}
