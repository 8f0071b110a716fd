/** Conversions, by the definitions of the International Temperature Scale and the degree Fahrenheit. */
import { expect, it } from 'vitest';
import { celsiusDegreeDays, toCelsius } from '../../services/model/units.ts';

it('converts fixed points exactly', () => {
  expect(toCelsius(32, 'Far')).toBe(0);
  expect(toCelsius(212, 'Far')).toBe(100);
  expect(toCelsius(-40, 'Far')).toBe(-40);
  expect(toCelsius(64.4, 'Far')).toBeCloseTo(18, 12);
  expect(toCelsius(273.15, 'K')).toBe(0);
  expect(toCelsius(18.5, 'Cel')).toBe(18.5);
});

it('9 Fahrenheit degree-days are 5 Celsius degree-days', () => {
  expect(celsiusDegreeDays(9)).toBe(5);
});
