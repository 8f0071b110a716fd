/** Which laws are fitted, with the range each parameter may take: wide enough to hold any arthropod. */
import type { RateLaw } from '../../../services/model/climate/rateLaws.ts';
import type { Bounds } from './leastSquares.ts';

export interface FittableLaw {
  name: string;
  bounds: readonly Bounds[];
  law(parameters: readonly number[]): RateLaw;
}

export const fittableLaws: readonly FittableLaw[] = [
  {
    name: 'linear, no upper limit',
    bounds: [range(-5, 15), range(40, 700)],
    law: ([lowerC, degreeDays]) => ({ kind: 'linear', lowerC: lowerC!, degreeDays: degreeDays! }),
  },
  {
    name: 'linear, flat above the plateau',
    bounds: [range(-5, 15), range(40, 700), range(18, 40)],
    law: ([lowerC, degreeDays, upperC]) => ({
      kind: 'linear',
      lowerC: lowerC!,
      degreeDays: degreeDays!,
      upperC: upperC!,
    }),
  },
  {
    name: 'linear, falling to zero',
    bounds: [range(-5, 15), range(40, 700), range(18, 40), range(0.5, 40)],
    law: ([lowerC, degreeDays, plateauC, fallC]) => ({
      kind: 'linear',
      lowerC: lowerC!,
      degreeDays: degreeDays!,
      plateauC: plateauC!,
      zeroC: plateauC! + fallC!,
    }),
  },
  {
    name: 'Brière-1',
    bounds: [range(1e-6, 3e-4), range(-15, 15), range(28, 50)],
    law: ([a, lowerC, lethalC]) => ({ kind: 'briere-1', a: a!, lowerC: lowerC!, lethalC: lethalC! }),
  },
  {
    name: 'Brière-2',
    bounds: [range(1e-6, 1e-3), range(-15, 15), range(28, 50), range(0.3, 20)],
    law: ([a, lowerC, lethalC, m]) => ({
      kind: 'briere-2',
      a: a!,
      lowerC: lowerC!,
      lethalC: lethalC!,
      m: m!,
    }),
  },
  {
    name: 'Lactin-2',
    bounds: [range(0.001, 0.2), range(28, 60), range(0.1, 30), range(-1.5, 0.5)],
    law: ([rho, lethalC, delta, lambda]) => ({
      kind: 'lactin-2',
      rho: rho!,
      lethalC: lethalC!,
      delta: delta!,
      lambda: lambda!,
    }),
  },
  {
    name: 'Logan-6',
    bounds: [range(0.0005, 0.3), range(0.02, 0.3), range(28, 50), range(0.2, 10)],
    law: ([psi, rho, maximumC, delta]) => ({
      kind: 'logan-6',
      psi: psi!,
      rho: rho!,
      maximumC: maximumC!,
      delta: delta!,
    }),
  },
  {
    name: 'Sharpe-Schoolfield, heat side',
    bounds: [range(0.005, 0.6), range(3000, 45_000), range(10_000, 250_000), range(22, 45)],
    law: ([rateAt25C, activationCal, enthalpyCal, halfC]) => ({
      kind: 'sharpe-schoolfield',
      rateAt25C: rateAt25C!,
      activationCal: activationCal!,
      heat: { enthalpyCal: enthalpyCal!, halfC: halfC! },
    }),
  },
  {
    name: 'Taylor',
    bounds: [range(0.01, 0.5), range(15, 45), range(2, 25)],
    law: ([greatestRate, bestC, widthC]) => ({
      kind: 'taylor',
      greatestRate: greatestRate!,
      bestC: bestC!,
      widthC: widthC!,
    }),
  },
];

function range(low: number, high: number): Bounds {
  return { low, high };
}
