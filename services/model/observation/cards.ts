/** Sticky cards, which take what they catch. */
import type { Trap } from '../season.ts';
import { dayMs } from '../units.ts';

/** How many hang on each day from `startMs` on; those not taken down hang on. */
export function cardsHanging(
  traps: readonly Pick<Trap, 'hungAt' | 'takenDownAt'>[],
  startMs: number,
  days: number,
): Float64Array {
  const hanging = new Float64Array(days);
  const dayOf = (time: string) => (Date.parse(time) - startMs) / dayMs;
  for (const { hungAt, takenDownAt } of traps) {
    const from = dayOf(hungAt);
    const to = takenDownAt === undefined ? days : dayOf(takenDownAt);
    for (let day = Math.max(0, Math.floor(from)); day < to && day < days; day++) {
      hanging[day] = hanging[day]! + Math.min(to, day + 1) - Math.max(from, day);
    }
  }
  return hanging;
}
