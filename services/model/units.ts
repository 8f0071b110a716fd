/** Conversions to the units used everywhere inside: degrees Celsius and Celsius degree-days. */

/** UCUM codes of the temperature units a sensor may send. */
export type TemperatureUnit = 'Cel' | 'Far' | 'K';

export const celsiusOfFahrenheit = (temperatureF: number): number => ((temperatureF - 32) * 5) / 9;
export const celsiusOfKelvin = (temperatureK: number): number => temperatureK - 273.15;

/** A temperature in any unit as degrees Celsius. */
export function toCelsius(temperature: number, unit: TemperatureUnit): number {
  if (unit === 'Far') return celsiusOfFahrenheit(temperature);
  return unit === 'K' ? celsiusOfKelvin(temperature) : temperature;
}

/** A sum of temperature differences has no zero point: 9 Fahrenheit degree-days are 5 Celsius degree-days. */
export const celsiusDegreeDays = (fahrenheitDegreeDays: number): number => (fahrenheitDegreeDays * 5) / 9;

export const minuteMs = 60_000;
export const hourMs = 3_600_000;
export const dayMs = 86_400_000;
