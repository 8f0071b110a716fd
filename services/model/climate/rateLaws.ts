/**
 * Published laws of development, rate in 1/day at a temperature in degC; 0 outside their range. All forms as
 * reviewed by Damos & Savopoulou-Soultani 2012, Psyche 123405; the original equations from memory.
 */
import { finite } from '../numerics/finite.ts';

const notNegative = (rate: number) => Math.max(0, finite(rate, 'development rate'));

/** Brière-1: a T (T - T0) (TL - T)^(1/2). Brière, Pracros, Le Roux & Pierre 1999, Environ Entomol 28:22. */
export function briere1(law: { a: number; lowerC: number; lethalC: number }, temperatureC: number): number {
  if (temperatureC <= law.lowerC || temperatureC >= law.lethalC) return 0;
  const rise = law.a * temperatureC * (temperatureC - law.lowerC);
  return notNegative(rise * Math.sqrt(law.lethalC - temperatureC));
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
