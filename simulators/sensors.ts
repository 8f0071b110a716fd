/**
 * Cheap sensors as they are: one in the shade of a bench, one bare in the sun under the vent, each
 * with its own dialect, and the faults real boards have.
 */
import { chance, normal, type Random } from './random.ts';

export interface SensorKind {
  id: string;
  name: string;
  speaks: 'json' | 'senml' | 'plain';
  /** Reads too high in sun, by this much per W/m2 outdoors; 0 under a shield. */
  sunErrorCPerWm2: number;
  /** Constant error of this specimen. */
  offsetC: number;
}

export const faultKinds = [
  'dropout',
  'silence',
  'power-up-85',
  'lost-contact',
  'nan',
  'clock-1970',
  'retained',
  'duplicate',
  'fahrenheit',
  'stuck',
] as const;
export type FaultKind = (typeof faultKinds)[number];

export interface FaultSpell {
  sensorId: string;
  kind: FaultKind;
  afterHours: number;
  hours: number;
}

export interface Sample {
  /** Absent when the board sends no time. */
  timeMs?: number;
  temperatureC: number;
  humidityPct: number;
}

export interface Message {
  payload: string;
  retain: boolean;
}

/** What the probe would say if nothing were wrong: noise of 0.1 degC, last digit 0.1. */
export function measure(
  sensor: SensorKind,
  truth: { airC: number; humidityPct: number; globalWm2: number },
  timeMs: number,
  random: Random,
): Sample {
  const inSun = sensor.sunErrorCPerWm2 * truth.globalWm2 * (0.85 + 0.3 * random());
  return {
    timeMs,
    temperatureC: tenth(truth.airC + sensor.offsetC + inSun + normal(random, 0, 0.1)),
    humidityPct: Math.round(Math.min(99.9, Math.max(1, truth.humidityPct + normal(random, 0, 1.5)))),
  };
}

/** The messages a sensor sends for one sample while it has the given fault, or none. */
export function speak(
  sensor: SensorKind,
  sample: Sample,
  spell: (FaultSpell & { beganMs: number }) | undefined,
  random: Random,
): Message[] {
  const say = (said: Sample, retain = false): Message => ({ payload: phrase(sensor, said), retain });
  const { timeMs: _clock, ...timeless } = sample;
  switch (spell?.kind) {
    case undefined:
    case 'stuck': // its value stays where it was: see play.ts
      return [say(sample)];
    case 'silence':
      return [];
    case 'dropout':
      return chance(random, 0.6) ? [] : [say(sample)];
    case 'power-up-85':
      return [say({ ...sample, temperatureC: 85 })];
    case 'lost-contact':
      return [say({ ...sample, temperatureC: -127 })];
    case 'nan':
      return [{ payload: withNan(say(sample).payload), retain: false }];
    case 'clock-1970':
      return [say({ ...sample, timeMs: (sample.timeMs ?? 0) - spell.beganMs })];
    case 'retained':
      return [say(timeless, true)];
    case 'duplicate':
      return [say(sample), say(sample)];
    case 'fahrenheit':
      return [say({ ...sample, temperatureC: tenth(32 + 1.8 * sample.temperatureC) })];
  }
}

function phrase(sensor: SensorKind, { timeMs, temperatureC, humidityPct }: Sample): string {
  switch (sensor.speaks) {
    case 'plain':
      return temperatureC.toFixed(1);
    case 'json':
      return JSON.stringify({
        temperatureC,
        humidityPct,
        ...(timeMs === undefined ? {} : { time: new Date(timeMs).toISOString() }),
      });
    case 'senml': // RFC 8428: base name and time once, units Cel and %RH
      return JSON.stringify([
        {
          bn: `${sensor.id}-`,
          ...(timeMs === undefined ? {} : { bt: timeMs / 1000 }),
          n: 'temperature',
          u: 'Cel',
          v: temperatureC,
        },
        { n: 'humidity', u: '%RH', v: humidityPct },
      ]);
  }
}

/** What firmware prints when the humidity probe gives nothing: a bare nan, which is not JSON. */
function withNan(payload: string): string {
  const broken = payload.replace(/("humidityPct":|"%RH","v":)[\d.]+/, '$1nan');
  return broken === payload ? 'nan' : broken;
}

const tenth = (value: number) => Math.round(value * 10) / 10;
