import { capital, formatDay, type Order, speciesById, startOfLocalDay } from '../../model/index.ts';
import { type OpenParcel, openParcels, parcelEnding } from './openParcel.ts';
import { dayMs, endOfDay, type Matter, type WarningFacts, type WarningRule } from './rule.ts';

/**
 * From here on animals in a parcel come to harm: in the house, and on a doorstep, where the sun makes a parcel warmer
 * than the air. Common practice, no source.
 */
const harmfulFromC = { house: 35, outdoors: 30 };

/** Heat is expected on the day a parcel comes, or while it still waits to be set out. */
export const hotDelivery: WarningRule = {
  id: 'hot-delivery',
  matters: (facts) => openParcels(facts).flatMap((parcel) => matterOf(parcel, facts)),
  ending: (warning, facts) =>
    parcelEnding(warning, facts, { idOf, changed: 'No such heat is expected any more.' }),
};

const idOf = (order: Order) => `hot-delivery-${order.id}`;

function matterOf({ order, due, on, hasCome }: OpenParcel, facts: WarningFacts): Matter[] {
  const { timeZone } = facts.season.place;
  // When an overdue parcel comes nobody knows: `release-window` asks after it.
  if (!hasCome && due < on) return [];
  const heat = heatOn(on, facts);
  if (heat === undefined) return [];
  const { shortName } = speciesById(order.enemy);
  const keep = `Keep the parcel of ${shortName} in shade and cool, and set it out in the evening.`;
  return [
    {
      id: idOf(order),
      opensMs: Number.NEGATIVE_INFINITY,
      deadlineMs: endOfDay(on, timeZone),
      urgentFromMs: startOfLocalDay(on, timeZone) - 2 * dayMs,
      text: `Heat is expected on ${formatDay(on)}, ${heat}. ${hasCome ? '' : 'Ask for another day, or be there when it comes. '}${keep}`,
      reason: `${capital(shortName)} ${hasCome ? 'waits to be set out' : 'is due that day'}, and animals in a hot parcel die.`,
      ends: 'Ends when the day is over or turns cooler, or the release is entered.',
    },
  ];
}

/** `up to about 37 °C in the house`; undefined when no heat is expected, or nobody can say. */
function heatOn(day: string, { season: { place }, issued, outdoorHighC }: WarningFacts): string | undefined {
  const insideC = issued.forecast.temperature.outlook.find((each) => each.day === day)?.maxC.q50;
  const outsideC = place.kind === 'outdoors' ? insideC : outdoorHighC(day);
  const words = (highC: number, where: string) => `up to about ${Math.round(highC)} °C ${where}`;
  if (outsideC !== undefined && outsideC >= harmfulFromC.outdoors) return words(outsideC, 'outdoors');
  return insideC !== undefined && insideC >= harmfulFromC.house ? words(insideC, 'in the house') : undefined;
}
