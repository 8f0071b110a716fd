/** What a forecast and a figure work with, held against all readings of a house. */
import { beforeEach, describe, expect, it } from 'vitest';
import { withNeededReadings } from '../../services/forecasting/neededReadings.ts';
import { assembleSeason, importSeason, seasonText } from '../../services/forecasting/season.ts';
import { temperatureOf } from '../../services/forecasting/temperature.ts';
import { mean } from '../../services/model/climate/knots.ts';
import { hourlyMeans, temperatureAt } from '../../services/model/climate/temperatureCurve.ts';
import { type Sensor, seasonSchema, temperatureCurve } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store, StoredReading } from '../../services/store/store.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

const placeId = 'crooked-pane';
const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const dayMs = 24 * hourMs;
const asOfMs = Date.parse('2026-06-10T09:07:00Z');
const asOf = new Date(asOfMs).toISOString();

/** Three weeks of two sensors each five minutes; the floor, lower by a degree, was hung a week later. */
function house(silent: { fromMs: number; toMs: number } = { fromMs: 0, toMs: 0 }): StoredReading[] {
  const times = Array.from({ length: 21 * 288 }, (_, i) => asOfMs - (i + 1) * 5 * minuteMs).reverse();
  const warmthC = (timeMs: number) => 18 + 6 * Math.sin((2 * Math.PI * (timeMs / hourMs - 9)) / 24);
  return times
    .filter((timeMs) => timeMs < silent.fromMs || timeMs >= silent.toMs)
    .flatMap((timeMs, i): StoredReading[] => [
      {
        sensorId: 'bench',
        timeMs,
        temperatureC: i % 700 === 350 ? 85 : Math.round(10 * warmthC(timeMs)) / 10,
      },
      ...(timeMs < asOfMs - 14 * dayMs
        ? []
        : [{ sensorId: 'floor', timeMs, temperatureC: Math.round(10 * warmthC(timeMs)) / 10 - 1 }]),
    ]);
}

let store: Store;
async function bringIn(readings: readonly StoredReading[], sensors: readonly Sensor[] = []) {
  const timed = readings.map(({ timeMs, ...rest }) => ({ ...rest, time: new Date(timeMs).toISOString() }));
  const season = smallSeason();
  const described = [...season.sensors, ...sensors];
  await importSeason(
    store,
    { ...season, sensors: described, readings: timed },
    { replace: true, atMs: asOfMs },
  );
  let text = '';
  for await (const part of seasonText(store, placeId)) text += part;
  return seasonSchema.parse(JSON.parse(text));
}
beforeEach(() => {
  store = openStore({ path: ':memory:' });
  return () => store.close();
});

describe('the season of a forecast', () => {
  it('is the same from the store and from the file', async () => {
    const file = await bringIn(house());
    expect(await assembleSeason(store, placeId, asOfMs)).toEqual(withNeededReadings(file, asOf));
  });

  it('holds every reading of the last eight days, and one in half an hour of those before', async () => {
    await bringIn(house());
    const { readings } = await assembleSeason(store, placeId, asOfMs);
    const bench = readings.filter(({ sensorId }) => sensorId === 'bench').map(({ time }) => Date.parse(time));
    expect(bench.filter((timeMs) => timeMs >= asOfMs - 8 * dayMs)).toHaveLength(8 * 288);
    const before = bench.filter((timeMs) => timeMs < asOfMs - 8 * dayMs - hourMs);
    const halfHours = before.map((timeMs) => Math.floor(timeMs / (30 * minuteMs)));
    expect(halfHours).toEqual(halfHours.map((_, i) => halfHours[0]! + i));
  });

  it('is as warm as all of its readings, to a twentieth of a degree each day', async () => {
    const file = await bringIn(house());
    const days = (season: typeof file) => {
      const { meanC } = hourlyMeans(temperatureCurve(season, asOfMs)!);
      const hours = Array.from(meanC.slice(-20 * 24));
      return Array.from({ length: 20 }, (_, day) => mean(hours.slice(24 * day, 24 * (day + 1)))!);
    };
    const all = days(file);
    const apart = days(withNeededReadings(file, asOf)).map((meanC, day) => Math.abs(meanC - all[day]!));
    expect(Math.max(...apart)).toBeLessThan(0.05);
  });
});

describe('the temperature of some days', () => {
  const stretch = { fromMs: asOfMs - 4 * dayMs, toMs: asOfMs };

  /** By all readings of the place, at the knots of the figure. */
  async function apart(readings: readonly StoredReading[], sensors: readonly Sensor[] = []) {
    const file = await bringIn(readings, sensors);
    const whole = temperatureCurve(file, asOfMs)!;
    const part = (await temperatureOf(store, placeId, stretch))!;
    const known = new Map([...whole.timesMs].map((timeMs, i) => [timeMs, whole.temperaturesC[i]!]));
    const shared = [...part.timesMs].flatMap((timeMs, i) => {
      const wholeC = known.get(timeMs);
      const isShown = timeMs >= stretch.fromMs && timeMs < stretch.toMs;
      return wholeC === undefined || !isShown ? [] : [Math.abs(wholeC - part.temperaturesC[i]!)];
    });
    return { shared, part, whole };
  }

  it('is what the forecast uses, also of which sensor leads it', async () => {
    // The floor reads lower, but covers two weeks of three: over four days alone it would lead.
    const { shared } = await apart(house());
    expect(shared.length).toBeGreaterThan(500);
    expect(Math.max(...shared)).toBe(0);
  });

  it('is led by the sensor that leads the forecast, where one was corrected', async () => {
    // As it came the shelf reads lowest; with what is added to it since ten days, the bench does.
    const bench = house().filter(({ sensorId }) => sensorId === 'bench');
    const shelf = bench.map((each) => ({
      ...{ ...each, sensorId: 'shelf' },
      temperatureC: each.temperatureC === 85 ? 85 : each.temperatureC - 1,
    }));
    const corrections = [{ from: '2026-05-31', addC: 3 }];
    const { shared, part } = await apart(
      [...bench, ...shelf],
      [{ id: 'shelf', name: 'Shelf', unit: 'Cel', corrections }],
    );
    expect(shared.length).toBeGreaterThan(500);
    expect(Math.max(...shared)).toBe(0);
    const last = bench.at(-1);
    expect(temperatureAt(part, asOfMs - 5 * minuteMs)).toBe(last?.temperatureC);
    expect(last?.timeMs).toBe(asOfMs - 5 * minuteMs);
  });

  it('fills a gap from the days before, as the forecast does', async () => {
    const silent = { fromMs: asOfMs - 2 * dayMs, toMs: asOfMs - dayMs };
    const { part, whole, shared } = await apart(house(silent));
    const shown = ({ filled }: typeof whole) => filled.filter(({ fromMs }) => fromMs >= stretch.fromMs);
    expect(shown(part)).toEqual(shown(whole));
    expect(shown(part)).toMatchObject([{ by: 'diurnal-curve' }]);
    expect(shared.length).toBeGreaterThan(400);
    expect(Math.max(...shared)).toBeLessThan(0.3);
  });
});
