import { atLocalHour, capital, formatDay, parcelWords, type ReleasePlan } from '../../model/index.ts';
import { dayMs, done, type Matter, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

/** From here on it waits neither for the day's one message nor for the letter, so that three days are left. Judgement. */
const urgentDays = 4;

/** The last day to order a parcel that the advice wants, until the supplier's hour. */
export const orderBy: WarningRule = {
  id: 'order-by',
  matters: (facts) => wanted(facts).map((plan) => matterOf(plan, facts)),
  ending({ id, deadlineMs, raisedAtMs }, facts) {
    const again = wanted(facts).find((plan) => id.startsWith(stem(plan.enemy)));
    const ordered = facts.season.orders.some(
      (order) => id.startsWith(stem(order.enemy)) && Date.parse(order.orderedAt) >= raisedAtMs - dayMs,
    );
    if (ordered) return done('It was ordered.');
    if (deadlineMs < facts.nowMs) return done('The day has passed.');
    // Told, since the new day alone would speak against what was said before.
    if (again) return withdrawn(`The day moved to ${formatDay(again.orderBy)}.`);
    const none = wanted(facts).length === 0 ? 'No order is needed now.' : 'This parcel is not wanted now.';
    return withdrawn(`${none} ${facts.issued.advice.sentence}`);
  },
};

type ToOrder = ReleasePlan & { washFirst?: boolean | undefined };
type Wanted = ToOrder & { orderBy: string };

/** Every parcel the advice wants, also for pests that its sentence does not name. */
function wanted({ issued: { advice } }: WarningFacts): Wanted[] {
  const buys = advice.decision === 'order' || advice.decision === 'top-up';
  const plans: ToOrder[] = advice.toOrder ?? (buys && advice.plan ? [advice.plan] : []);
  const largest = new Map<string, ToOrder>();
  for (const plan of plans) {
    const known = largest.get(plan.enemy);
    const larger = plan.number > (known?.number ?? 0) ? plan : known!;
    // One parcel serves every pest it hunts, and so does the wash before it.
    const washFirst = plan.washFirst || known?.washFirst;
    largest.set(plan.enemy, { ...larger, ...(washFirst ? { washFirst } : {}) });
  }
  return [...largest.values()].flatMap((plan) =>
    plan.orderBy === undefined ? [] : [{ ...plan, orderBy: plan.orderBy }],
  );
}

const washBefore = 'Wash the plants before it comes.';

const stem = (enemy: string) => `order-by-${enemy}-`;

function matterOf(plan: Wanted, { season, issued: { advice } }: WarningFacts): Matter {
  const { place, orders } = season;
  const deadlineMs = atLocalHour(plan.orderBy, place.supplier?.cutoffHour ?? 24, place.timeZone);
  const spoken = advice.plan?.enemy === plan.enemy && advice.plan.orderBy === plan.orderBy;
  const what = parcelWords(plan);
  const nth = orders.filter((order) => order.enemy === plan.enemy).length;
  return {
    id: stem(plan.enemy) + plan.orderBy,
    opensMs: Number.NEGATIVE_INFINITY,
    deadlineMs,
    urgentFromMs: deadlineMs - urgentDays * dayMs,
    text: spoken
      ? `Order by ${formatDay(plan.orderBy)}. ${advice.sentence}${plan.washFirst && !advice.washFirst ? ` ${washBefore}` : ''}`
      : `Order ${what} by ${formatDay(plan.orderBy)}.${plan.washFirst ? ` ${washBefore}` : ''}`,
    reason: (spoken && advice.reasons[0]) || `${capital(what)} would come too late by a later order.`,
    ends: 'Ends when the order is entered, or the advice changes.',
    days: {
      uid: `order/${plan.enemy}/${nth}`,
      from: plan.orderBy,
      to: plan.orderBy,
      title: `Last day to order ${what}`,
    },
  };
}
