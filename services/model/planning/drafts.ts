/** The ways to deal with a pest before they are weighed: parcels of several sizes and dates, a wash, and leaving it. */
import { addDays, daysBetween } from '../climate/calendar.ts';
import type { ReleasePlan, WayKind } from '../outcome.ts';
import type { Season } from '../season.ts';
import { nextDelivery } from './delivery.ts';
import { parcelOf, parcelWords, soldAs } from './parcel.ts';

/** Of the usual size; whole pieces. */
const sizes = [0.5, 2, 5];
/** A parcel ordered after so many more weeks, once counted again. */
const weeksLater = [1, 2, 4];

export interface Draft {
  kind: WayKind;
  id: string;
  label: string;
  plan?: ReleasePlan;
}

export const leaveDraft: Draft = { kind: 'leave', id: 'leave', label: 'Leave it' };
export const washDraft: Draft = { kind: 'wash', id: 'wash', label: 'Wash, no release' };

/** A parcel set out on its first day, alone or with a wash before it. */
export function parcelNow(kind: 'now' | 'wash-then', plan: ReleasePlan): Draft & { plan: ReleasePlan } {
  const words = parcelWords(plan);
  const id = `${kind}-${plan.enemy}-${plan.number}`;
  return { kind, id, label: kind === 'now' ? words : `Wash, then ${words}`, plan };
}

/** The same parcel in other sizes. */
export function otherSizes({ place }: Season, usual: ReleasePlan): Draft[] {
  const { enemy, number, windowFrom, orderBy, arrivesOn } = usual;
  const { perPiece } = soldAs(enemy);
  const numbers = sizes.map((size) => Math.max(1, Math.round((size * number) / perPiece)) * perPiece);
  return [...new Set(numbers)]
    .filter((other) => other !== number)
    .map((other) => {
      const plan = {
        ...parcelOf(place, { enemy, number: other }, windowFrom),
        ...(orderBy !== undefined ? { orderBy } : {}),
        ...(arrivesOn !== undefined ? { arrivesOn } : {}),
      };
      return parcelNow('now', plan);
    });
}

/** The same parcel later, one for each day on which it can come: days away push several weeks onto one. */
export function laterDates(
  { place }: Season,
  { enemy, number, windowFrom }: ReleasePlan,
  asOfMs: number,
): Draft[] {
  const drafts = weeksLater.map((weeks): [day: string, draft: Draft] => {
    const delivery = nextDelivery(place, asOfMs, addDays(windowFrom, 7 * weeks));
    const plan = { ...parcelOf(place, { enemy, number }, delivery.arrivesOn), ...delivery };
    const label = `${parcelWords(plan)}, ${laterWords(daysBetween(windowFrom, delivery.arrivesOn))}`;
    return [delivery.arrivesOn, { kind: 'later', id: `later-${enemy}-${weeks}`, label, plan }];
  });
  return [...new Map(drafts).values()];
}

function laterWords(days: number): string {
  if (days % 7 !== 0) return `${days} days later`;
  return days === 7 ? 'a week later' : `${days / 7} weeks later`;
}
