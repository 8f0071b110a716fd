import { formatDay } from '../../model/index.ts';
import { endOfDay, type WarningRule } from './rule.ts';

/** The last day to order a parcel that the advice wants. */
export const orderBy: WarningRule = {
  id: 'order-by',
  raise({ place, issued }) {
    const { decision, plan, sentence } = issued.advice;
    if ((decision !== 'order' && decision !== 'top-up') || plan?.orderBy === undefined) return [];
    return [
      {
        id: `order-by-${plan.enemy}-${plan.orderBy}`,
        deadlineMs: endOfDay(plan.orderBy, place.timeZone),
        text: `Order by ${formatDay(plan.orderBy)}. ${sentence}`,
      },
    ];
  },
};
