import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hourlyReadings, rawReadings } from '../../services/api/schemas/answers.ts';
import { pointsOf } from '../../services/api/temperaturePoints.ts';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
const place = '/api/places/lean-to';
const at = (time: string) => Date.parse(`2026-05-12T${time}:00Z`);

beforeEach(async () => {
  house = await openHouse();
  await house.send('POST', '/api/places', aPlace);
  await house.store.readings.add('lean-to', [
    { sensorId: 'bench', timeMs: at('10:00'), temperatureC: 20, humidityPct: 61 },
    { sensorId: 'bench', timeMs: at('10:30'), temperatureC: 22 },
    { sensorId: 'bench', timeMs: at('10:40'), temperatureC: 85, doubt: 'stuck-85' },
    { sensorId: 'floor', timeMs: at('10:00'), temperatureC: 17 },
  ]);
});
afterEach(() => house.close());

describe('readings', () => {
  test('one by one, in a window and for one sensor', async () => {
    const answer = await house.app.inject(
      `${place}/readings?resolution=raw&sensor=bench&from=2026-05-12T10:00:00Z&to=2026-05-12T10:40:00Z`,
    );
    expect(answer.json().readings).toEqual([
      { sensorId: 'bench', time: '2026-05-12T10:00:00.000Z', temperatureC: 20, humidityPct: 61 },
      { sensorId: 'bench', time: '2026-05-12T10:30:00.000Z', temperatureC: 22 },
    ]);
  });

  test('in their documented shape, whichever is asked for', async () => {
    const ask = async (query: string) => (await house.app.inject(`${place}/readings?${query}`)).json();
    expect(rawReadings.strict().safeParse(await ask('resolution=raw'))).toMatchObject({ success: true });
    expect(hourlyReadings.strict().safeParse(await ask(''))).toMatchObject({ success: true });
  });

  test('by the hour, without what is not believed', async () => {
    const { hours } = (await house.app.inject(`${place}/readings?sensor=bench`)).json();
    expect(hours).toEqual([
      {
        sensorId: 'bench',
        hour: '2026-05-12T10:00:00.000Z',
        count: 2,
        meanC: 21,
        minC: 20,
        maxC: 22,
        doubted: 1,
      },
    ]);
  });

  test('the temperature as used names what is not believed', async () => {
    const { points, doubted } = (await house.app.inject(`${place}/temperature`)).json();
    expect(points.length).toBeGreaterThan(0);
    expect(points.every((p: { temperatureC: number }) => p.temperatureC < 30)).toBe(true);
    expect(doubted).toEqual([
      { sensorId: 'bench', time: '2026-05-12T10:40:00.000Z', temperatureC: 85, doubt: 'stuck-85' },
    ]);
  });
});

describe('points for a chart', () => {
  const n = 10_000;
  const curve = {
    timesMs: Float64Array.from({ length: n }, (_, i) => i * 60_000),
    temperaturesC: Float64Array.from({ length: n }, (_, i) => (i === 7777 ? 41.5 : i === 1234 ? -6.5 : 20)),
    filled: [{ fromMs: 100 * 60_000, toMs: 200 * 60_000, by: 'diurnal-curve' as const }],
    doubted: [],
  };
  const window = { fromMs: 0, toMs: n * 60_000 };

  test('are few, and still hold the highest and the lowest', () => {
    const points = pointsOf(curve, window, 500);
    const temperatures = points.map((p) => p.temperatureC);
    expect(points.length).toBeLessThanOrEqual(500);
    expect([Math.min(...temperatures), Math.max(...temperatures)]).toEqual([-6.5, 41.5]);
    expect(points.map((p) => p.timeMs)).toEqual(points.map((p) => p.timeMs).sort((a, b) => a - b));
  });

  test('say by what a gap was filled; its two ends were measured', () => {
    const filled = pointsOf(curve, window, n).filter((p) => p.filledBy === 'diurnal-curve');
    expect(filled).toHaveLength(99);
  });
});
