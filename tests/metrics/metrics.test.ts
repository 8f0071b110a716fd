import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { aPlace, openHouse } from '../api/house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
beforeEach(async () => {
  house = await openHouse();
  await house.send('POST', '/api/places', aPlace);
  await house.send('POST', '/api/places/lean-to/sensors', { id: 'bench', name: 'Bench' });
  await house.store.readings.add('lean-to', [
    { sensorId: 'bench', timeMs: house.clock.ms - 90_000, temperatureC: 19 },
  ]);
});
afterEach(() => house.close());

const metrics = async () => (await house.app.inject('/api/metrics')).body;

// OpenMetrics 1.0.0 (RFC draft of 2020): the ABNF of a line, and the rules beside it.
describe('the OpenMetrics text', () => {
  const sample =
    /^([a-zA-Z_:][a-zA-Z0-9_:]*)(\{([a-zA-Z_][a-zA-Z0-9_]*="[^"\\\n]*",?)*\})? -?[0-9.e+-]+( [0-9.]+)?( # .*)?$/;

  test('is sent as what it is', async () => {
    const { headers } = await house.app.inject('/api/metrics');
    expect(headers['content-type']).toBe('application/openmetrics-text; version=1.0.0; charset=utf-8');
  });

  test('ends with EOF, and every line before is a comment or a sample', async () => {
    const lines = (await metrics()).split('\n');
    expect(lines.slice(-2)).toEqual(['# EOF', '']);
    const samples = lines.slice(0, -2).filter((line) => !/^# (TYPE|HELP|UNIT) [a-z_]+ .+$/.test(line));
    expect(samples.length).toBeGreaterThan(15);
    expect(samples.filter((line) => !sample.test(line))).toEqual([]);
  });

  test('names each metric once, and counters end in _total', async () => {
    const text = await metrics();
    const types = [...text.matchAll(/^# TYPE (\w+) (\w+)$/gm)].map(([, name, type]) => ({ name, type }));
    expect(new Set(types.map(({ name }) => name)).size).toBe(types.length);
    for (const { name } of types.filter(({ type }) => type === 'counter')) {
      const samples = text.split('\n').filter((line) => line.startsWith(`${name}`));
      expect(samples.every((line) => line.startsWith(`${name}_total`))).toBe(true);
    }
  });
});

describe('the numbers', () => {
  test('are those of the house', async () => {
    const text = await metrics();
    expect(text).toContain('glasstide_sensor_silence_seconds{place="lean-to",sensor="bench"} 90\n');
    expect(text).toContain('glasstide_http_requests_total{method="POST",status="2xx"} 2\n');
    expect(text).toContain('glasstide_troubles 0\n');
    expect(text).not.toMatch(/^glasstide_disk_free_bytes /m);
  });

  test('of a sensor that is gone are not told again', async () => {
    await metrics();
    await house.send('DELETE', '/api/places/lean-to/sensors/bench');
    expect(await metrics()).not.toContain('sensor="bench"');
  });
});

test('the checks speak of the same house', async () => {
  const { checks } = (await house.app.inject('/api/checks')).json();
  expect(checks).toContainEqual({
    id: 'sensor-lean-to-bench',
    title: 'Sensor Bench, Lean-to',
    state: 'well',
    says: 'Last read just now.',
  });
});
