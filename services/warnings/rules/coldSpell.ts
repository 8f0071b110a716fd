import {
  addDays,
  capital,
  enemyTraits,
  formatDay,
  type Order,
  speciesById,
  startOfLocalDay,
} from '../../model/index.ts';
import { type OpenParcel, openParcels, parcelEnding } from './openParcel.ts';
import { dayMs, type Matter, type WarningFacts, type WarningRule } from './rule.ts';

/** Days after a release in which cold costs most: they have not yet settled. */
const settlingDays = 6;

/** The house is expected to fall below what a natural enemy lives above, just when its parcel is set out. */
export const coldSpell: WarningRule = {
  id: 'cold-spell',
  matters: (facts) => openParcels(facts).flatMap((parcel) => matterOf(parcel, facts)),
  ending: (warning, facts) =>
    parcelEnding(warning, facts, { idOf, changed: 'No such cold is expected any more.' }),
};

const idOf = (order: Order) => `cold-spell-${order.id}`;

function matterOf({ order, on, hasCome }: OpenParcel, { season: { place }, issued }: WarningFacts): Matter[] {
  const { livesAboveC } = enemyTraits(speciesById(order.enemy));
  const { shortName } = speciesById(order.enemy);
  const cold = issued.forecast.temperature.outlook.filter(
    ({ day, minC }) => day >= on && day <= addDays(on, settlingDays) && minC.q50 < livesAboveC,
  );
  const [first] = cold;
  if (first === undefined) return [];
  const lowestC = Math.round(Math.min(...cold.map((day) => day.minC.q50)));
  const startMs = startOfLocalDay(first.day, place.timeZone);
  const wait = hasCome ? 'Heat' : 'Ask for a later day, or heat';
  return [
    {
      id: idOf(order),
      opensMs: Number.NEGATIVE_INFINITY,
      deadlineMs: startMs,
      urgentFromMs: startMs - 2 * dayMs,
      text: `Cold is expected from ${formatDay(first.day)}, down to about ${lowestC} °C. ${wait} the house above ${livesAboveC} °C.`,
      reason: `${capital(shortName)} lives above ${livesAboveC} °C, and the parcel is set out from ${formatDay(on)}.`,
      ends: 'Ends when the days ahead turn warmer, or the release is entered.',
    },
  ];
}
