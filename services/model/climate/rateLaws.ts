/**
 * Published laws of development, rate in 1/day at a temperature in degC; 0 outside their range. All forms as
 * reviewed by Damos & Savopoulou-Soultani 2012, Psyche 123405; the original equations from memory.
 */
import { finite } from '../numerics/finite.ts';
import { type DegreeDayLaw, degreeDayRate } from './developmentRate.ts';

const notNegative = (rate: number) => Math.max(0, finite(rate, 'development rate'));

/** Brière-1: a T (T - T0) (TL - T)^(1/2). Brière, Pracros, Le Roux & Pierre 1999, Environ Entomol 28:22. */
export function briere1(law: { a: number; lowerC: number; lethalC: number }, temperatureC: number): number {
  if (temperatureC <= law.lowerC || temperatureC >= law.lethalC) return 0;
  const rise = law.a * temperatureC * (temperatureC - law.lowerC);
  return notNegative(rise * Math.sqrt(law.lethalC - temperatureC));
}

/** Brière-2: a T (T - T0) (TL - T)^(1/m); m = 2 is Brière-1. Brière et al. 1999, as above. */
export function briere2(
  law: { a: number; lowerC: number; lethalC: number; m: number },
  temperatureC: number,
): number {
  if (temperatureC <= law.lowerC || temperatureC >= law.lethalC) return 0;
  const rise = law.a * temperatureC * (temperatureC - law.lowerC);
  return notNegative(rise * (law.lethalC - temperatureC) ** (1 / law.m));
}

/** Lactin-2: exp(rho T) - exp(rho TL - (TL - T) / D) + lambda. Lactin et al. 1995, Environ Entomol 24:68. */
export function lactin2(
  law: { rho: number; lethalC: number; delta: number; lambda: number },
  temperatureC: number,
): number {
  const { rho, lethalC, delta, lambda } = law;
  const brake = Math.exp(rho * lethalC - (lethalC - temperatureC) / delta);
  return notNegative(Math.exp(rho * temperatureC) - brake + lambda);
}

/** Logan-6: psi (exp(rho T) - exp(rho TM - (TM - T) / D)), never 0 in the cold. Logan et al. 1976, Environ Entomol 5:1133. */
export function logan6(
  law: { psi: number; rho: number; maximumC: number; delta: number },
  temperatureC: number,
): number {
  const { psi, rho, maximumC, delta } = law;
  const brake = Math.exp(rho * maximumC - (maximumC - temperatureC) / delta);
  return notNegative(psi * (Math.exp(rho * temperatureC) - brake));
}

/** Taylor's bell: Rm exp(-((T - Tm) / To)^2 / 2). Taylor 1981, Am Nat 117:1. */
export function taylor(
  law: { greatestRate: number; bestC: number; widthC: number },
  temperatureC: number,
): number {
  return law.greatestRate * Math.exp(-0.5 * ((temperatureC - law.bestC) / law.widthC) ** 2);
}

/** Where an enzyme is half inactive, and how sharply: calories per mole, negative for cold, positive for heat. */
export interface Inactivation {
  halfC: number;
  enthalpyCal: number;
}

const zeroCelsiusK = 273.15;
const gasConstantCal = 1.987;
/** 25 degC by the 298.15 K convention; papers that round to 298 K print a rate 0.15 degC off. */
const referenceK = 298.15;

/**
 * Sharpe-Schoolfield: r25 (T / 298.15) exp(HA/R (1/298.15 - 1/T)) / (1 + cold + heat), each inactivation
 * exp(H/R (1/Thalf - 1/T)), temperatures in K, R = 1.987 cal. Schoolfield, Sharpe & Magnuson 1981, J Theor Biol
 * 88:719. Without an inactivation its term is 0.
 */
export function sharpeSchoolfield(
  law: {
    rateAt25C: number;
    activationCal: number;
    cold?: Inactivation | undefined;
    heat?: Inactivation | undefined;
  },
  temperatureC: number,
): number {
  const { rateAt25C, activationCal, cold, heat } = law;
  const t = temperatureC + zeroCelsiusK;
  const arrhenius = (calories: number, fromK: number) =>
    Math.exp((calories / gasConstantCal) * (1 / fromK - 1 / t));
  const inactive = (of: Inactivation | undefined) =>
    of === undefined ? 0 : arrhenius(of.enthalpyCal, of.halfC + zeroCelsiusK);
  const active = rateAt25C * (t / referenceK) * arrhenius(activationCal, referenceK);
  return notNegative(active / (1 + inactive(cold) + inactive(heat)));
}

/**
 * Lower threshold and degree-days from days of development at constant temperatures: least squares of rate on
 * temperature (Campbell, Frazer, Gilbert, Gutierrez & Mackauer 1974, J Appl Ecol 11:431). Any unit of temperature.
 */
export function linearFit(points: readonly { temperature: number; days: number }[]): {
  lowerThreshold: number;
  degreeDays: number;
} {
  const temperatureMean = points.reduce((sum, point) => sum + point.temperature, 0) / points.length;
  const rateMean = points.reduce((sum, point) => sum + 1 / point.days, 0) / points.length;
  let covariance = 0;
  let variance = 0;
  for (const { temperature, days } of points) {
    covariance += (temperature - temperatureMean) * (1 / days - rateMean);
    variance += (temperature - temperatureMean) ** 2;
  }
  const degreeDays = finite(variance / covariance, 'degree-days of the fitted line');
  return { lowerThreshold: temperatureMean - rateMean * degreeDays, degreeDays };
}

/** A law with its numbers, all from one paper or one table. Linear: plateau and zero as in `LinearDevelopment`. */
export type RateLaw =
  | ({ kind: 'linear'; degreeDays: number } & DegreeDayLaw)
  | ({ kind: 'briere-1' } & Parameters<typeof briere1>[0])
  | ({ kind: 'briere-2' } & Parameters<typeof briere2>[0])
  | ({ kind: 'lactin-2' } & Parameters<typeof lactin2>[0])
  | ({ kind: 'logan-6' } & Parameters<typeof logan6>[0])
  | ({ kind: 'taylor' } & Parameters<typeof taylor>[0])
  | ({ kind: 'sharpe-schoolfield' } & Parameters<typeof sharpeSchoolfield>[0]);

/** Rate in 1/day by any of the laws. */
export function rateBy(law: RateLaw, temperatureC: number): number {
  switch (law.kind) {
    case 'linear':
      return degreeDayRate(law, temperatureC) / law.degreeDays;
    case 'briere-1':
      return briere1(law, temperatureC);
    case 'briere-2':
      return briere2(law, temperatureC);
    case 'lactin-2':
      return lactin2(law, temperatureC);
    case 'logan-6':
      return logan6(law, temperatureC);
    case 'taylor':
      return taylor(law, temperatureC);
    case 'sharpe-schoolfield':
      return sharpeSchoolfield(law, temperatureC);
  }
}
