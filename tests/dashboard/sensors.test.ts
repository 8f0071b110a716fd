/** How a sensor does, in words. */
import { describe, expect, it } from 'vitest';
import type { TemperatureAnswer } from '../../dashboard/api.ts';
import { doubtSentence } from '../../dashboard/believed.ts';
import {
  doubtedWords,
  everyWords,
  healthSentence,
  sensorHealth,
} from '../../dashboard/pages/sensors/health.ts';
import { habits, inOwnHabits } from '../../dashboard/words/habits.ts';
import { type DoubtCode, doubtWords } from '../../services/model/climate/doubtCodes.ts';

const hourMs = 3_600_000;
const now = Date.parse('2026-05-13T09:00:00Z');
const ago = (hours: number) => new Date(now - hours * hourMs).toISOString();
const bench = { id: 'bench', version: 1, changedAt: ago(200), deleted: false };
const sensors = [{ ...bench, data: { id: 'bench', name: 'Bench', unit: 'Cel' as const } }];
const hour = (hoursAgo: number, count: number, doubted: number) => ({
  ...{ sensorId: 'bench', hour: ago(hoursAgo), count, doubted },
  ...{ meanC: 18, minC: 18, maxC: 18 },
});
const lost = (hoursAgo: number): TemperatureAnswer['doubted'][number] => ({
  ...{ sensorId: 'bench', time: ago(hoursAgo), temperatureC: -127, doubt: 'one-wire-lost' },
});
const reading = (hoursAgo: number, doubt?: string) => ({
  ...{ sensorId: 'bench', time: ago(hoursAgo), temperatureC: doubt ? -127 : 18 },
  ...(doubt && { doubt }),
});

describe('a sensor', () => {
  it('that read well all day reads well, also when its newest reading is not believed', () => {
    const hours = [hour(20, 4, 0), hour(10, 4, 0), hour(0.9, 3, 1)];
    const readings = [reading(0.2), reading(0.1, 'one-wire-lost')];
    const all = sensorHealth(sensors, { readings, hours, doubted: [lost(0.1)] }, now);
    expect(all[0]?.state).toBe('well');
    expect(healthSentence(all, 0)).toBe('One reads well.');
  });

  it('that was mostly wrong in the last 24 hours is not believed, whatever it did before', () => {
    const hours = [hour(100, 40, 0), hour(10, 1, 1)];
    const readings = [reading(0.1, 'one-wire-lost')];
    const doubted = [lost(9.5), lost(0.1)];
    expect(sensorHealth(sensors, { readings, hours, doubted }, now)[0]?.state).toBe('doubted');
  });

  it('tells the last value that was not believed, when, and why', () => {
    const [health] = sensorHealth(
      sensors,
      { readings: [], hours: [hour(30, 0, 2)], doubted: [lost(30), lost(29)] },
      now,
    );
    expect(health && doubtedWords(health, 'Europe/Berlin')).toBe(
      '2 readings of the last 7 days were not believed: they are kept and not used. The last was -127.0 °C, Tue 12 May 06:00. ' +
        'Exactly -127 °C is what a 1-wire board says when the sensor has lost contact.',
    );
  });

  it.each([
    [10_000, 'Speaks more than once a minute.'],
    [60_000, 'Speaks every minute.'],
    [5 * 60_000, 'Speaks every 5 minutes.'],
    [hourMs, 'Speaks every hour.'],
    [1.5 * hourMs, 'Speaks every 1 hour 30 minutes.'],
  ])('with %i ms between its readings: %s', (ms, words) => expect(everyWords(ms)).toBe(words));
});

describe('doubts', () => {
  const codes: Record<DoubtCode, true> = {
    'not-a-number': true,
    'one-wire-power-up': true,
    'one-wire-lost': true,
    'out-of-range': true,
    spike: true,
    'one-wire-fraction': true,
    stuck: true,
    sunlit: true,
  };
  it.each([...Object.keys(codes), 'one-of-tomorrow'])('of %s are told as the service tells them', (code) =>
    expect(doubtSentence(code)).toBe(doubtWords(code)),
  );

  it.each(Object.keys(codes))('of %s say no °C to who reads °F', (code) => {
    const before = habits.value;
    habits.value = { ...before, degrees: 'F' };
    expect(inOwnHabits(doubtSentence(code))).not.toContain('°C');
    habits.value = before;
  });
});
