/** Curves and seasons for tests, from a few points. */
import { type TemperatureCurve, temperatureCurve } from '../../services/model/climate/temperatureCurve.ts';
import { type Reading, type Season, seasonSchema } from '../../services/model/season.ts';

export const hour = 3_600_000;
export const day = 86_400_000;

/** The curve through (hours since 1970, degC), nothing filled. */
export function throughPoints(
  points: readonly (readonly [hours: number, temperatureC: number])[],
): TemperatureCurve {
  return {
    timesMs: Float64Array.from(points, ([hours]) => hours * hour),
    temperaturesC: Float64Array.from(points, ([, temperatureC]) => temperatureC),
    filled: [],
    doubted: [],
  };
}

export const start = Date.parse('2026-05-01T00:00:00Z');

export function at(timeMs: number, temperatureC: number, sensorId = 'bench'): Reading {
  return { sensorId, time: new Date(timeMs).toISOString(), temperatureC };
}

/** A smooth warm day: 20 degC on average, warmest at 14:30 UTC, never twice the same value in a row. */
export function mild(timeMs: number): number {
  const days = timeMs / day;
  return 20 + 7 * Math.cos(2 * Math.PI * (days - 14.5 / 24)) + 0.8 * Math.sin(2.1 * days);
}

/** Readings every `minutes` of a course of temperature. */
export function every(
  minutes: number,
  { fromMs, toMs, sensorId = 'bench' }: { fromMs: number; toMs: number; sensorId?: string },
  course: (timeMs: number) => number = mild,
): Reading[] {
  const step = minutes * 60_000;
  const length = Math.floor((toMs - fromMs) / step) + 1;
  return Array.from({ length }, (_, i) => at(fromMs + i * step, course(fromMs + i * step), sensorId));
}

export function seasonOf(parts: Partial<Season>): Season {
  return seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: 'lean-to',
      name: 'Lean-to',
      kind: 'glasshouse',
      areaM2: 11,
      latitudeDeg: 51.5,
      longitudeDeg: -0.1,
      timeZone: 'Europe/London',
      pests: [],
      limits: {},
      seasonEnd: '10-15',
    },
    ...parts,
  });
}

/** The curve of these readings; an error when there is none. */
export function curveOf(readings: Reading[], untilMs: number, rest: Partial<Season> = {}): TemperatureCurve {
  const curve = temperatureCurve(seasonOf({ readings, ...rest }), untilMs);
  if (!curve) throw new Error('no curve');
  return curve;
}
