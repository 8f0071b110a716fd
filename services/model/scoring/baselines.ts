/**
 * What anybody could say without a model: the next count is as the last one, or goes on as the last three went. Each
 * is a distribution: the logarithm of the expected count spreads normally with the square root of the weeks ahead, and
 * a count is drawn around it. Which spread is best is left to the score, in hindsight: the baseline's advantage.
 */
import { binomialAt } from '../inference/binomialAt.ts';
import { poissonAt } from '../inference/poissonAt.ts';
import { type Random, standardNormal } from '../numerics/random.ts';
import type { CountedAs } from '../outcome.ts';
import { dayMs } from '../units.ts';
import type { Observed } from './observed.ts';

/** Standard deviations of the log after one week that are tried. */
export const spreads = [0.2, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8] as const;
/** Added to a count before its logarithm is taken, so that none can become one. */
const floor = 0.3;
const draws = 400;

const meanOf = ({ counts }: Observed) => counts.reduce((sum, count) => sum + count, 0) / counts.length;
const weekMs = 7 * dayMs;

/** Log of the expected count `lead` weeks ahead, as last time. */
export const asLast = (rounds: readonly Observed[]): number => Math.log(meanOf(rounds.at(-1)!) + floor);

/** The same along the straight line through the logs of the last three rounds (least squares). */
export function asTrend(rounds: readonly Observed[], lead: number): number {
  const points = rounds.slice(-3).map((round) => ({ x: round.timeMs / weekMs, y: asLast([round]) }));
  const mean = (of: 'x' | 'y') => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  const [x, y] = [mean('x'), mean('y')];
  const variance = points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  const slope = variance > 0 ? points.reduce((sum, p) => sum + (p.x - x) * (p.y - y), 0) / variance : 0;
  return y + slope * (points.at(-1)!.x + lead - x);
}

/** Draws of the count `lead` weeks ahead about an expected log. */
export function drawnAbout(
  expectedLog: number,
  ahead: { lead: number; spread: number; unit: CountedAs['unit'] },
  random: Random,
): number[] {
  const { lead, spread, unit } = ahead;
  return Array.from({ length: draws }, () => {
    const log = expectedLog + spread * Math.sqrt(lead) * standardNormal(random);
    const uniform = random();
    if (unit === 'trap-week') return poissonAt(Math.min(Math.exp(log), 1e5), uniform);
    // Leaves of ten: the odds grow as a count would.
    const odds = Math.exp(log) / Math.max(0.3, 10 - Math.min(10, Math.exp(expectedLog)));
    return binomialAt(10, odds / (1 + odds), uniform);
  });
}
