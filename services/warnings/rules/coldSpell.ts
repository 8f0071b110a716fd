import {
  addDays,
  capital,
  dueDay,
  enemyTraits,
  formatDay,
  localDay,
  type Order,
  openOrders,
  speciesById,
  startOfLocalDay,
} from '../../model/index.ts';
import { dayMs, done, type Matter, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

/** Days after a release in which cold costs most: they have not yet settled. */
const settlingDays = 6;

/** The house is expected to fall below what a natural enemy lives above, just when its parcel is set out. */
export const coldSpell: WarningRule = {
  id: 'cold-spell',
  matters: (facts) => openOrders(facts.season, facts.nowMs).flatMap((order) => matterOf(order, facts)),
  ending: ({ deadlineMs }, { nowMs }) =>
    deadlineMs < nowMs ? done('The day has come.') : withdrawn('No such cold is expected any more.'),
};

function matterOf(order: Order, { season: { place }, issued, nowMs }: WarningFacts): Matter[] {
  const { livesAboveC } = enemyTraits(speciesById(order.enemy));
  const { shortName } = speciesById(order.enemy);
  const today = localDay(nowMs, place.timeZone);
  const due = dueDay(place, order);
  const from = order.arrivedAt !== undefined || due < today ? today : due;
  const cold = issued.forecast.temperature.outlook.filter(
    (day) => day.day >= from && day.day <= addDays(from, settlingDays) && day.minC.q50 < livesAboveC,
  );
  const [first] = cold;
  if (first === undefined) return [];
  const lowestC = Math.round(Math.min(...cold.map((day) => day.minC.q50)));
  const startMs = startOfLocalDay(first.day, place.timeZone);
  const wait = order.arrivedAt === undefined ? 'Ask for a later day, or heat' : 'Heat';
  return [
    {
      id: `cold-spell-${order.id}`,
      opensMs: Number.NEGATIVE_INFINITY,
      deadlineMs: startMs,
      urgentFromMs: startMs - 2 * dayMs,
      text: `Cold is expected from ${formatDay(first.day)}, down to about ${lowestC} °C. ${wait} the house above ${livesAboveC} °C.`,
      reason: `${capital(shortName)} lives above ${livesAboveC} °C, and the parcel is set out from ${formatDay(from)}.`,
      ends: 'When the days ahead turn warmer, or the release is entered.',
    },
  ];
}
