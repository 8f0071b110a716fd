/** What to do with a parcel that comes: look, tell the supplier in time, and how long it may wait. */
import { addDays, dayWords } from './dates.ts';
import { areaSign, areaTyped, ownArea } from './habits.ts';

/** Common practice, no source. */
const keeping =
  'Set them out that day. If that cannot be: those sent with food keep a few days, most others two days at most, in shade and cool, never in sun or a kitchen refrigerator.';

/** The day after it comes is the last to complain on: common practice, no source. It comes no earlier than today. */
export function parcelCare(expectedOn: string | undefined, today: string): string {
  const comes = expectedOn !== undefined && expectedOn < today ? undefined : expectedOn;
  const by = comes === undefined ? 'by the next day' : `by ${dayWords(addDays(comes, 1))}`;
  return `When the parcel comes: look at it the same day, keep a few in a jar. If hardly anything moves, tell the supplier ${by}. ${keeping}`;
}

export interface OrderSum {
  areaM2: number;
  perM2: number;
}

/** The sum behind a number: `11 m² times 6 a m² is 66, in whole packs 120`. */
export function orderSumWords({ areaM2, perM2 }: OrderSum, number: number): string {
  const unit = areaSign();
  const rate = Number((perM2 * areaTyped(1)).toPrecision(2));
  const needed = Math.ceil(areaM2 * perM2);
  const packs = needed === number ? '' : `, in whole packs ${number}`;
  return `${ownArea(areaM2)} ${unit} times ${rate} a ${unit} is ${needed}${packs}`;
}
