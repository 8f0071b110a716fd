/** Every law fitted to every published table, with its quality. Rates are fitted, days are shown. */
import { type RateLaw, rateBy } from '../../../services/model/climate/rateLaws.ts';
import {
  type DevelopmentTable,
  developmentTables,
} from '../../../services/model/species/developmentTables.ts';
import { type FittableLaw, fittableLaws } from './laws.ts';
import { leastSquares } from './leastSquares.ts';

export interface Fit {
  name: string;
  law: RateLaw;
  parameterCount: number;
  sumOfSquares: number;
  r2: number;
  /** Absent where the points are too few for the correction: n must exceed the parameters by more than 2. */
  aicc?: number;
  /** Every parameter is held by the points: none at the edge of its range, none that no point feels. */
  held: boolean;
}

/** One law fitted to one table; nothing where the points are no more than the parameters. */
export function fitLaw(table: DevelopmentTable, kind: FittableLaw): Fit | undefined {
  const x = table.days.map(([temperatureC]) => temperatureC);
  const y = table.days.map(([, days]) => 1 / days);
  const { bounds } = kind;
  if (y.length <= bounds.length) return undefined;
  const { parameters, sumOfSquares } = leastSquares({
    x,
    y,
    bounds,
    curve: (at) => {
      const law = kind.law(at);
      return (temperatureC) => rateBy(law, temperatureC);
    },
  });
  const mean = y.reduce((sum, rate) => sum + rate, 0) / y.length;
  const scatter = y.reduce((sum, rate) => sum + (rate - mean) ** 2, 0);
  const aicc = correctedAic(y.length, bounds.length + 1, sumOfSquares);
  const missAt = (at: readonly number[]) =>
    x.reduce((sum, temperatureC, i) => sum + (rateBy(kind.law(at), temperatureC) - y[i]!) ** 2, 0);
  const held = bounds.every(({ low, high }, i) => {
    const step = (high - low) / 1000;
    const value = parameters[i]!;
    const moved = [value - step, value + step].map((to) => missAt(parameters.with(i, to)));
    return (
      value - low > step && high - value > step && moved.every((miss) => miss > sumOfSquares * (1 + 1e-9))
    );
  });
  return {
    name: kind.name,
    law: kind.law(parameters),
    parameterCount: bounds.length,
    sumOfSquares,
    r2: 1 - sumOfSquares / scatter,
    ...(aicc !== undefined && { aicc }),
    held,
  };
}

/** n ln(S/n) + 2k + 2k(k+1)/(n-k-1), k counting the variance. Hurvich & Tsai 1989, Biometrika 76:297. */
export function correctedAic(n: number, k: number, sumOfSquares: number): number | undefined {
  if (n - k - 1 <= 0) return undefined;
  return n * Math.log(sumOfSquares / n) + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}

/**
 * The fit to use: the lowest AICc among laws whose parameters the points hold, or where none has an AICc the least
 * sum of squares among those with the fewest parameters. Where the days lengthen again in the heat only laws that
 * turn there count: with six points AICc would rather take a straight line and deny the heat.
 */
export function chosenFit({ days }: DevelopmentTable, fits: readonly Fit[]): Fit | undefined {
  const warmest = days.at(-1)!;
  const quickest = days.reduce((a, b) => (b[1] < a[1] ? b : a));
  const turns = quickest !== warmest;
  const fitting = fits.filter(
    ({ held, law }) => held && (!turns || rateBy(law, warmest[0]) < rateBy(law, quickest[0])),
  );
  const fewest = Math.min(...fitting.map((fit) => fit.parameterCount));
  const ranked = fitting.some((fit) => fit.aicc !== undefined)
    ? fitting.filter((fit) => fit.aicc !== undefined).sort((a, b) => a.aicc! - b.aicc!)
    : fitting.filter((fit) => fit.parameterCount === fewest).sort((a, b) => a.sumOfSquares - b.sumOfSquares);
  return ranked[0];
}

export const allFits = (): { table: DevelopmentTable; fits: Fit[] }[] =>
  developmentTables.map((table) => ({
    table,
    fits: fittableLaws.flatMap((kind) => fitLaw(table, kind) ?? []),
  }));
