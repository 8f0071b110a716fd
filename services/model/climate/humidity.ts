/**
 * Moist air. FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes & Smith 1998), chapter 3; pressures in
 * kPa. Its equation 11 is within 0.3 % of the other published ones from 0 to 50 °C, far below the error of a
 * cheap humidity sensor.
 */
import { finite } from '../numerics/finite.ts';

const factor = 17.27;
const offsetC = 237.3;

/** Vapour pressure of saturated air over water in kPa, equation 11. */
export function saturationVapourPressureKPa(temperatureC: number): number {
  return 0.6108 * Math.exp((factor * finite(temperatureC, 'air temperature')) / (temperatureC + offsetC));
}

/** Mean of the day's lowest and highest (equation 12): the pressure at the mean temperature would be too low. */
export function dailySaturationVapourPressureKPa({ minC, maxC }: { minC: number; maxC: number }): number {
  return (saturationVapourPressureKPa(minC) + saturationVapourPressureKPa(maxC)) / 2;
}

export interface MoistAir {
  temperatureC: number;
  /** Relative humidity, 0 to 100. */
  humidityPct: number;
}

/** How much drier than saturated the air is, in kPa. */
export function vapourPressureDeficitKPa({ temperatureC, humidityPct }: MoistAir): number {
  return saturationVapourPressureKPa(temperatureC) * (1 - finite(humidityPct, 'relative humidity') / 100);
}

/** Temperature at which this air would be saturated: equation 11 turned round. Needs a humidity above 0. */
export function dewPointC({ temperatureC, humidityPct }: MoistAir): number {
  const exponent = Math.log(humidityPct / 100) + (factor * temperatureC) / (temperatureC + offsetC);
  return finite((offsetC * exponent) / (factor - exponent), 'dew point');
}
