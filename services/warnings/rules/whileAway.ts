import {
  addDays,
  firstDayHome,
  formatDay,
  lastDayHome,
  localDay,
  type Order,
  speciesById,
  startOfLocalDay,
} from '../../model/index.ts';
import { lastCountDay, nextCount } from './countDue.ts';
import { type OpenParcel, openParcels, parcelEnding } from './openParcel.ts';
import {
  dayMs,
  done,
  endOfDay,
  type Matter,
  type WarningFacts,
  type WarningRule,
  withdrawn,
} from './rule.ts';

/** Told so many days before the last one at home, the last day counted in. Judgement. */
const noticeDays = 3;
const changed = 'It no longer falls on days away.';

/** A count or a parcel falls on days away from home. */
export const whileAway: WarningRule = {
  id: 'while-away',
  matters: (facts) => [
    ...countAway(facts),
    ...openParcels(facts).flatMap((parcel) => parcelAway(parcel, facts)),
  ],
  ending(warning, facts) {
    if (warning.id.startsWith(parcelStem)) {
      const own = openParcels(facts).find(({ order }) => parcelId(order) === warning.id);
      if (own?.hasCome) return done('The parcel has come.');
      return parcelEnding(warning, facts, { idOf: parcelId, changed });
    }
    if (warning.id !== countId(lastCountDay(facts))) return done('It was counted.');
    if (nextCount(facts) === undefined) return withdrawn('The house rests: no count is wanted.');
    return warning.deadlineMs < facts.nowMs ? done('You are away.') : withdrawn(changed);
  },
};

const countId = (last: string | undefined) => `away-count-after-${last ?? 'none'}`;
const parcelStem = 'away-parcel-';
const parcelId = (order: Order) => parcelStem + order.id;

/** Told while it can still be done before leaving; away from home only the day back is left (`count-due`). */
function countAway(facts: WarningFacts): Matter[] {
  const { place } = facts.season;
  const count = nextCount(facts);
  if (count === undefined) return [];
  const { last, due, verb } = count;
  const [leaves, home] = [lastDayHome(place, due), firstDayHome(place, due)];
  if (home === due || leaves < localDay(facts.nowMs, place.timeZone)) return [];
  // Counted shortly before leaving: that is the count that can be had.
  if (last !== undefined && last > addDays(leaves, -noticeDays)) return [];
  return [
    {
      id: countId(last),
      opensMs: startOfLocalDay(addDays(leaves, 1 - noticeDays), place.timeZone),
      deadlineMs: endOfDay(leaves, place.timeZone),
      text: `You are away on ${formatDay(due)}, when the next count is due: count by ${formatDay(leaves)}, before you leave, or on ${formatDay(home)}, when you are back.`,
      reason: 'The ranges widen with each week without a count.',
      ends: 'Ends when a count is entered, or the days away change.',
      days: {
        uid: `away-count/${last}`,
        from: leaves,
        to: leaves,
        title: `${verb} before you leave`,
      },
    },
  ];
}

function parcelAway({ order, due, hasCome }: OpenParcel, { season, nowMs }: WarningFacts): Matter[] {
  const { place } = season;
  const home = firstDayHome(place, due);
  if (hasCome || home === due || due < localDay(nowMs, place.timeZone)) return [];
  const name = speciesById(order.enemy).shortName;
  const startMs = startOfLocalDay(due, place.timeZone);
  return [
    {
      id: parcelId(order),
      opensMs: Number.NEGATIVE_INFINITY,
      deadlineMs: startMs,
      urgentFromMs: startMs - noticeDays * dayMs,
      text: `You are away on ${formatDay(due)}, when the parcel of ${name} is due: ask for a day from ${formatDay(home)} on, or let somebody set them out.`,
      reason: 'Natural enemies keep for a day or two at most.',
      ends: 'Ends when the order has another day, or the days away change.',
      days: {
        uid: `away-parcel/${order.id}`,
        from: due,
        to: due,
        title: `Parcel of ${name} while you are away`,
      },
    },
  ];
}
