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
import { done, endOfDay, type Matter, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

/** A parcel is best set out on the day it comes; two days later it has lost much (common practice, no source). */
const keepsDays = 2;

/** A parcel is about to come, or has come: most natural enemies keep for a day or two only. */
export const releaseWindow: WarningRule = {
  id: 'release-window',
  matters: (facts) => openOrders(facts.season, facts.nowMs).flatMap((order) => matterOf(order, facts)),
  ending({ id, deadlineMs }, { season, nowMs }) {
    const order = season.orders.find((each) => id === idOf(each));
    if (order === undefined) return withdrawn('The order was taken back.');
    const isOut = season.releases.some(
      (r) => r.enemy === order.enemy && Date.parse(r.time) >= Date.parse(order.orderedAt),
    );
    if (isOut) return done('The release was entered.');
    return deadlineMs < nowMs ? done('The days have passed.') : withdrawn('The parcel comes on another day.');
  },
};

const idOf = (order: Order) => `release-${order.id}`;

function matterOf(order: Order, { season: { place }, nowMs }: WarningFacts): Matter[] {
  const { release } = enemyTraits(speciesById(order.enemy));
  if (release === undefined) return [];
  const { shortName } = speciesById(order.enemy);
  const hasCome = order.arrivedAt !== undefined;
  const from = hasCome ? localDay(Date.parse(order.arrivedAt ?? ''), place.timeZone) : dueDay(place, order);
  const to = addDays(from, keepsDays);
  const deadlineMs = endOfDay(to, place.timeZone);
  if (deadlineMs < nowMs) return [];
  const set = `${release.verb} the ${shortName} by ${formatDay(to)}, ${release.where}`;
  const overdue = !hasCome && localDay(nowMs, place.timeZone) > from;
  return [
    {
      id: idOf(order),
      opensMs: startOfLocalDay(addDays(from, hasCome ? 0 : -1), place.timeZone),
      deadlineMs,
      ...(hasCome && { urgentFromMs: startOfLocalDay(from, place.timeZone) }),
      text: hasCome
        ? `${capital(set)}.`
        : overdue
          ? `The ${shortName} was due ${formatDay(from)}: enter its arrival, or ask the supplier.`
          : `A parcel is due ${formatDay(from)}: ${set}.`,
      reason: 'Natural enemies keep for a day or two at most.',
      ends: 'Ends when the release is entered.',
      days: { uid: `release/${order.id}`, from, to, title: `${capital(release.verb)} the ${shortName}` },
    },
  ];
}
