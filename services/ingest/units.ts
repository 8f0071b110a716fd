import { toCelsius as exactCelsius, type TemperatureUnit } from '../model/index.ts';

/** °C to 0.001, far below what a cheap probe resolves: 64.4 °F is kept as 18, not 18.000000000000004. */
export function toCelsius(value: number, unit: TemperatureUnit): number {
  return unit === 'Cel' ? value : Math.round(exactCelsius(value, unit) * 1000) / 1000;
}
