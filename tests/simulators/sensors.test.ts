import { describe, expect, test } from 'vitest';
import type { GardenEvent } from '../../simulators/play.ts';
import { play } from '../../simulators/play.ts';
import { stream } from '../../simulators/random.ts';
import { scenarioByName } from '../../simulators/scenarios.ts';
import { faultKinds, measure, type SensorKind, speak } from '../../simulators/sensors.ts';

const base: SensorKind = { id: 'bench', name: 'Bench', speaks: 'json', sunErrorCPerWm2: 0, offsetC: 0 };
const timeMs = Date.UTC(2026, 4, 13, 6, 15);
const sample = { timeMs, temperatureC: 19.4, humidityPct: 68 };

describe('dialects', () => {
  const say = (speaks: SensorKind['speaks']) =>
    speak({ ...base, speaks }, sample, undefined, stream(1, 'x'))[0]!.payload;

  test('JSON names the quantities and the time', () => {
    expect(JSON.parse(say('json'))).toEqual({
      temperatureC: 19.4,
      humidityPct: 68,
      time: '2026-05-13T06:15:00.000Z',
    });
  });

  test('SenML has base time in seconds and the units of RFC 8428 section 12.1', () => {
    const [temperature, humidity] = JSON.parse(say('senml'));
    expect(temperature).toMatchObject({ bt: timeMs / 1000, u: 'Cel', v: 19.4 });
    expect(humidity).toMatchObject({ u: '%RH', v: 68 });
  });

  test('a plain number is only the temperature', () => {
    expect(say('plain')).toBe('19.4');
  });
});

test('readings have a last digit of 0.1 and noise around the truth', () => {
  const random = stream(3, 'noise');
  const truth = { airC: 20, humidityPct: 60, globalWm2: 0 };
  const errors = Array.from({ length: 2000 }, () => measure(base, truth, 0, random).temperatureC - 20);
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  expect(Math.abs(mean)).toBeLessThan(0.02);
  expect(errors.every((error) => Math.abs(error * 10 - Math.round(error * 10)) < 1e-9)).toBe(true);
  expect(new Set(errors.map((error) => error.toFixed(1))).size).toBeGreaterThan(3);
});

test('a bare sensor reads 3 to 15 degrees too high in full sun, a shaded one less than 1', () => {
  const truth = { airC: 25, humidityPct: 50, globalWm2: 850 };
  for (const { sunErrorCPerWm2, id } of scenarioByName('spring-whitefly').sensors) {
    const high = measure({ ...base, sunErrorCPerWm2 }, truth, 0, stream(2, id)).temperatureC - 25;
    if (id === 'vent') expect(high).toBeGreaterThan(3);
    expect(high).toBeLessThan(id === 'vent' ? 15 : 1);
  }
});

describe('faults in the stream', () => {
  const scenario = scenarioByName('faulty-sensors');
  const startMs = Date.parse(scenario.startsAt);
  const messages = readings(scenario.name);

  function readings(name: string) {
    const found: Extract<GardenEvent, { what: 'message' }>[] = [];
    for (const event of play(scenarioByName(name), 2)) {
      if (event.atMs > startMs + 24 * 24 * 3_600_000) break;
      if (event.what === 'message' && event.topic.includes('/readings/')) found.push(event);
    }
    return found;
  }

  const during = (kind: (typeof faultKinds)[number]) => {
    const spell = scenario.faults.find((fault) => fault.kind === kind)!;
    const from = startMs + spell.afterHours * 3_600_000;
    const to = from + spell.hours * 3_600_000;
    return {
      expected: spell.hours * 4,
      sent: messages.filter(({ topic, atMs }) => topic.endsWith(spell.sensorId) && atMs >= from && atMs < to),
    };
  };
  const values = (kind: (typeof faultKinds)[number]) =>
    during(kind).sent.map(({ payload }) => Number(/"(?:temperatureC|v)":(-?[\d.]+)/.exec(payload)?.[1]));

  test('every kind has its spell', () => {
    expect(new Set(scenario.faults.map((fault) => fault.kind))).toEqual(new Set(faultKinds));
  });

  test('silence sends nothing, dropouts send less', () => {
    expect(during('silence').sent).toHaveLength(0);
    const { sent, expected } = during('dropout');
    expect(sent.length).toBeGreaterThan(0);
    expect(sent.length).toBeLessThan(expected);
  });

  test('85 after power-up, -127 without contact', () => {
    expect(new Set(values('power-up-85'))).toEqual(new Set([85]));
    expect(new Set(values('lost-contact'))).toEqual(new Set([-127]));
  });

  test('a bare nan makes JSON unreadable but leaves the temperature in it', () => {
    for (const { payload } of during('nan').sent) {
      expect(() => JSON.parse(payload)).toThrow();
      expect(payload).toContain('nan');
    }
    expect(values('nan').every((value) => value > 0 && value < 50)).toBe(true);
  });

  test('an unset clock counts from boot', () => {
    for (const { payload } of during('clock-1970').sent) {
      const { time, bt } = [JSON.parse(payload)].flat()[0];
      expect(time ? Date.parse(time) : bt * 1000).toBeLessThan(Date.UTC(1970, 0, 2));
    }
  });

  test('a retained ghost has no time of its own', () => {
    for (const { retain, payload } of during('retained').sent) {
      expect(retain).toBe(true);
      expect(payload).not.toMatch(/"time"|"bt"/);
    }
  });

  test('duplicates come twice, to the letter', () => {
    const { sent, expected } = during('duplicate');
    expect(sent).toHaveLength(2 * expected);
    expect(sent[1]).toEqual(sent[0]);
  });

  test('a day in Fahrenheit is 1.8 times and 32 more', () => {
    const spell = during('fahrenheit');
    expect(spell.sent).toHaveLength(spell.expected);
    expect(values('fahrenheit').every((value) => value > 45 && value < 110)).toBe(true);
  });

  test('a stuck sensor says one value for longer than 12 hours', () => {
    const { sent, expected } = during('stuck');
    expect(sent).toHaveLength(expected);
    expect(expected).toBeGreaterThan(48);
    expect(new Set(values('stuck')).size).toBe(1);
  });

  test('the third sensor speaks plain numbers', () => {
    const plain = messages.filter(({ topic }) => topic.endsWith('/door'));
    expect(plain.length).toBeGreaterThan(2000);
    expect(plain.every(({ payload }) => Number.isFinite(Number(payload)))).toBe(true);
  });
});
