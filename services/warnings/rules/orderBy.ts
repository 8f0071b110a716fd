import { atLocalHour, formatDay } from '../../model/index.ts';
import type { WarningRule } from './rule.ts';

/** The last day to order a parcel that the advice wants, until the supplier's hour. */
export const orderBy: WarningRule = {
  id: 'order-by',
  raise({ place, issued }) {
    const { decision, plan, sentence } = issued.advice;
    if ((decision !== 'order' && decision !== 'top-up') || plan?.orderBy === undefined) return [];
    return [
      {
        id: `order-by-${plan.enemy}-${plan.orderBy}`,
        deadlineMs: atLocalHour(plan.orderBy, place.supplier?.cutoffHour ?? 24, place.timeZone),
        text: `Order by ${formatDay(plan.orderBy)}. ${sentence}`,
      },
    ];
  },
};
