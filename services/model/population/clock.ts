/** The clock of physiological age: egg (or birth) to adult = 1. */
import { rampSum } from '../climate/developmentRate.ts';
import { rateBy } from '../climate/rateLaws.ts';
import type { Development } from '../species/record.ts';
import { totalDegreeDays } from './stages.ts';

/** Clock units per day as a function of temperature: by the fitted law of the record, else along its line. */
export function clockRate(development: Development): (temperatureC: number) => number {
  const total = totalDegreeDays(development);
  const { fitted } = development;
  if (fitted) return (temperatureC) => rateBy(fitted.law, temperatureC) * (fitted.spanDegreeDays / total);
  const { ramps, steps } = rampSum(development);
  return (temperatureC) => {
    let rate = 0;
    for (const [at, slope] of ramps) if (temperatureC > at) rate += slope * (temperatureC - at);
    for (const [at, jump] of steps) if (temperatureC > at) rate += jump;
    return Math.max(0, rate) / total;
  };
}

/** Clock units of a mean adult life. */
export function adultLife(development: Development, lifeDaysAt20C: number): number {
  return lifeDaysAt20C * clockRate(development)(20);
}
