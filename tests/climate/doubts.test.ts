/** Sensors that lie, each in its own way (faults as reported for 1-wire and unshielded sensors). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TimedReading } from '../../services/model/climate/doubtCodes.ts';
import { doubtWords, findDoubts } from '../../services/model/climate/doubts.ts';
import { hour, mild, start } from './curves.ts';

const minute = 60_000;
const london = { latitudeDeg: 51.5, longitudeDeg: -0.1 };

function series(stepMinutes: number, hours: number, course = mild, sensorId = 'bench'): TimedReading[] {
  const length = Math.floor((hours * 60) / stepMinutes) + 1;
  return Array.from({ length }, (_, i) => {
    const timeMs = start + i * stepMinutes * minute;
    return { sensorId, timeMs, temperatureC: course(timeMs) };
  });
}

/** The series with some readings replaced: [position, temperature]. */
function replaced(readings: TimedReading[], values: [number, number][]): TimedReading[] {
  const copy = readings.map((reading) => ({ ...reading }));
  for (const [i, temperatureC] of values) copy[i]!.temperatureC = temperatureC;
  return copy;
}

const doubts = (readings: TimedReading[]) =>
  findDoubts(readings, london).map(({ timeMs, doubt }) => [timeMs, doubt]);
const when = (readings: TimedReading[], i: number) => readings[i]!.timeMs;

describe('one sensor', () => {
  const readings = series(5, 30);

  it('is believed while it makes sense', () => {
    expect(doubts(readings)).toEqual([]);
  });

  it.each([
    [85, 'one-wire-power-up'],
    [-127, 'one-wire-lost'],
    [Number.NaN, 'not-a-number'],
    [Number.POSITIVE_INFINITY, 'not-a-number'],
    [-30.1, 'out-of-range'],
    [65.1, 'out-of-range'],
  ])('%s is %s', (temperatureC, doubt) => {
    expect(doubts(replaced(readings, [[40, temperatureC]]))).toEqual([[when(readings, 40), doubt]]);
  });

  it('at -30 and 65 °C it is only strange', () => {
    const frost = series(60, 3, (timeMs) => -30 + (timeMs - start) / hour);
    const heat = series(60, 3, (timeMs) => 65 - (timeMs - start) / hour);
    expect([...doubts(frost), ...doubts(heat)]).toEqual([]);
  });

  it('jumping by more than 15 °C and back is a spike, also over several readings', () => {
    expect(doubts(replaced(readings, [[40, 48]]))).toEqual([[when(readings, 40), 'spike']]);
    const three = replaced(readings, [
      [40, -5],
      [41, -6],
      [42, -5.5],
    ]);
    expect(doubts(three)).toEqual([40, 41, 42].map((i) => [when(readings, i), 'spike']));
  });

  it('jumping once and staying there is not: somebody moved it', () => {
    const moved = series(5, 6, (timeMs) => mild(timeMs) + (timeMs > start + 3 * hour ? 18 : 0));
    expect(doubts(moved)).toEqual([]);
  });

  it('a spike that has not come back yet is not judged', () => {
    expect(doubts(replaced(readings, [[readings.length - 1, 48]]))).toEqual([]);
  });

  it.each([0.5, 0.75, 0.83])('a reading of %s of its neighbours is a slip', (fraction) => {
    const slip = replaced(readings, [[150, fraction * readings[150]!.temperatureC]]);
    expect(doubts(slip)).toEqual([[when(readings, 150), 'one-wire-fraction']]);
  });

  it('a door opened for a while is not a slip', () => {
    const door = replaced(
      readings,
      [150, 151, 152].map((i) => [i, 0.8 * readings[i]!.temperatureC]),
    );
    expect(doubts(door)).toEqual([]);
  });

  it('the same value for twelve hours is stuck, for eleven it is not', () => {
    const frozen = (hours: number) =>
      series(15, 30, (timeMs) =>
        timeMs >= start + 6 * hour && timeMs <= start + (6 + hours) * hour ? 19.44 : mild(timeMs),
      );
    expect(doubts(frozen(11))).toEqual([]);
    const found = doubts(frozen(12));
    expect(found).toHaveLength(49);
    expect(new Set(found.map(([, doubt]) => doubt))).toEqual(new Set(['stuck']));
  });

  it('two equal readings half a day apart are not stuck', () => {
    expect(doubts(series(13 * 60, 39, () => 18))).toEqual([]);
  });
});

describe('two sensors', () => {
  const shaded = series(15, 47);
  const noon = start + 12 * hour;

  it('the one more than 8 °C above the other in daylight stands in the sun', () => {
    const inSun = series(
      10,
      47,
      (timeMs) => mild(timeMs) + (Math.abs(timeMs - noon) < 2 * hour ? 9.5 : 0.4),
      'roof',
    );
    const found = findDoubts([...shaded, ...inSun], london);
    expect(found.every(({ sensorId, doubt }) => sensorId === 'roof' && doubt === 'sunlit')).toBe(true);
    expect(found).toHaveLength(23);
  });

  it('the same difference at night has another cause', () => {
    const heated = series(
      10,
      47,
      (timeMs) => mild(timeMs) + (Math.abs(timeMs - noon) > 9 * hour ? 9.5 : 0),
      'mat',
    );
    const byNight = findDoubts([...shaded, ...heated], london).filter(({ timeMs }) => {
      const hourOfDay = ((timeMs % 86_400_000) / hour + 24) % 24;
      return hourOfDay > 20 || hourOfDay < 4;
    });
    expect(byNight).toEqual([]);
  });

  it('nobody is sunlit where the place is not known, or against a dead sensor', () => {
    const inSun = series(10, 47, (timeMs) => mild(timeMs) + 9.5, 'roof');
    expect(findDoubts([...shaded, ...inSun])).toEqual([]);
    const dead = shaded.map((reading) => ({ ...reading, temperatureC: -127 }));
    expect(findDoubts([...dead, ...inSun], london).filter(({ doubt }) => doubt === 'sunlit')).toEqual([]);
  });
});

it('the order in which readings arrive does not matter', () => {
  const readings = [
    ...replaced(series(10, 20), [
      [5, 85],
      [30, 45],
      [60, 0.5 * mild(start + 600 * minute)],
    ]),
    ...series(15, 20, (timeMs) => mild(timeMs) + 9.5, 'roof'),
  ];
  const expected = findDoubts(readings, london);
  expect(expected.length).toBeGreaterThan(10);
  const orders = fc.shuffledSubarray(readings, { minLength: readings.length });
  fc.assert(
    fc.property(orders, (shuffled) => {
      expect(findDoubts(shuffled, london)).toEqual(expected);
    }),
    { numRuns: 20, seed: 7 },
  );
});

it('every doubt has its sentence', () => {
  expect(doubtWords('stuck')).toMatch(/twelve hours/);
  expect(doubtWords('from a later version')).toMatch(/in doubt/);
});
