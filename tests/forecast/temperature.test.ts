import { describe, expect, it } from 'vitest';
import { localDay } from '../../services/model/climate/calendar.ts';
import { forecast } from '../../services/model/forecast.ts';
import { seasonEndMs, seasonStartMs, upTo } from '../../services/model/inference/seasonPath.ts';
import { onDay, sampleSeason } from './sample.ts';

const members = 40;

describe('temperature of a forecast', () => {
  const season = sampleSeason({ weeks: 3, whitefly: [0, 0, 0] });

  it('has every local day so far with its lowest, mean and highest', () => {
    const { days } = forecast(season, onDay(21), { members }).temperature;
    expect(days[0]!.day).toBe('2026-04-06');
    expect(days.length).toBeGreaterThanOrEqual(21);
    for (const day of days.slice(1, 20)) {
      // The readings swing by 6 degC around 21, and drift by at most 2.
      expect(Math.abs(day.maxC - day.minC - 12)).toBeLessThan(1.5);
      expect(Math.abs(day.meanC - 21)).toBeLessThan(2.1);
      expect(day.filledHours).toBe(0);
    }
  });

  it('rounds all three alike, to hundredths: the mean lies between the lowest and the highest', () => {
    const still = season.readings.map((reading) => ({ ...reading, temperatureC: 20.5555 }));
    const { days } = forecast({ ...season, readings: still }, onDay(21), { members }).temperature;
    for (const { minC, meanC, maxC } of days) expect([minC, meanC, maxC]).toEqual([20.56, 20.56, 20.56]);
    const { outlook } = forecast(season, onDay(21), { members }).temperature;
    const told = outlook.flatMap(({ minC, meanC, maxC }) => [minC, meanC, maxC].flatMap(Object.values));
    for (const each of told) expect(Math.round(each * 100) / 100).toBe(each);
  });

  it('tells hours filled in', () => {
    const from = Date.parse(onDay(10));
    const readings = season.readings.filter(({ time }) => {
      const gone = Date.parse(time) - from;
      return gone < 0 || gone >= 8 * 3_600_000;
    });
    const { days } = forecast({ ...season, readings }, onDay(21), { members }).temperature;
    // The last reading before and the first after the gap are nine hours apart.
    expect(days.reduce((sum, day) => sum + day.filledHours, 0)).toBeCloseTo(9, 6);
  });

  it('looks at least eight weeks ahead, wider with time', () => {
    const { outlook } = forecast(season, onDay(21), { members: 200 }).temperature;
    expect(outlook.length).toBeGreaterThanOrEqual(56);
    const width = (i: number) => outlook[i]!.meanC.q90 - outlook[i]!.meanC.q10;
    expect(width(0)).toBeLessThan(width(20));
    expect(outlook[3]!.minC.q50).toBeLessThan(outlook[3]!.maxC.q50);
  });

  it('warmer weeks behind make a faster pest ahead', () => {
    const waveOf = (meanC: number) => {
      const grown = sampleSeason({ weeks: 6, whitefly: [0, 1, 2, 4, 6, 9], meanC });
      return forecast(grown, onDay(42), { members: 100 }).pests[0]!.waves[0]!.adults.q50;
    };
    expect(waveOf(23) < waveOf(18)).toBe(true);
  });
});

describe('what was known', () => {
  it('leaves out later counts, releases and traps, and the day that is not over', () => {
    const season = sampleSeason({
      weeks: 2,
      whitefly: [1, 2],
      more: {
        dailyExtremes: [
          { day: '2026-04-10', minC: 10, maxC: 20 },
          { day: '2026-04-16', minC: 10, maxC: 20 },
        ],
        releases: [
          {
            id: 'r',
            enemy: 'encarsia-formosa',
            form: 'pupa on card',
            number: 9,
            time: onDay(12),
            aliveShare: 1,
          },
        ],
      },
    });
    const known = upTo(season, Date.parse(onDay(10)));
    expect(known.trapCounts.map((count) => count.id)).toEqual(['north-0', 'south-0']);
    expect(known.releases).toEqual([]);
    expect(known.dailyExtremes.map((extremes) => extremes.day)).toEqual(['2026-04-10']);
  });

  it('takes off a trap and an order what happened to them later', () => {
    const { traps, ...season } = sampleSeason({ weeks: 2, whitefly: [1, 2] });
    const orders = [1, 11].map((ordered) => ({
      id: `o${ordered}`,
      enemy: 'encarsia-formosa' as const,
      number: 60,
      orderedAt: onDay(ordered),
      arrivedAt: onDay(ordered + 12),
    }));
    const down = traps.map((trap) => ({ ...trap, takenDownAt: onDay(12) }));
    const before = upTo({ ...season, traps: down, orders }, Date.parse(onDay(10)));
    expect(before.traps).toEqual(traps);
    expect(before.orders.map((order) => [order.id, order.arrivedAt])).toEqual([['o1', undefined]]);
    const after = upTo({ ...season, traps: down, orders }, Date.parse(onDay(14)));
    expect(after.traps).toEqual(down);
    expect(after.orders.map((order) => order.arrivedAt)).toEqual([onDay(13), undefined]);
  });

  it('begins with the first record, and after a year at its last anniversary four weeks back', () => {
    const season = sampleSeason({ weeks: 2, whitefly: [1, 2] });
    const start = (asOf: string, of = season) =>
      localDay(seasonStartMs(of, Date.parse(asOf)), 'Europe/Paris');
    expect(start('2026-05-01T12:00:00Z')).toBe('2026-04-06');
    expect(start('2027-04-06T12:00:00Z')).toBe('2026-04-06');
    expect(start('2027-04-20T12:00:00Z')).toBe('2026-04-06');
    expect(start('2027-05-03T23:00:00Z')).toBe('2027-04-06');
    expect(start('2028-01-31T12:00:00Z')).toBe('2027-04-06');
    const leap = {
      ...season,
      traps: season.traps.map((trap) => ({ ...trap, hungAt: '2024-02-29T12:00:00Z' })),
    };
    expect(start('2026-05-01T12:00:00Z', leap)).toBe('2026-02-28');
  });

  it('the season ends after its last day, next year when this one is over', () => {
    const { place } = sampleSeason({ weeks: 0, whitefly: [] });
    const end = (asOf: string) => new Date(seasonEndMs(place, Date.parse(asOf))).toISOString();
    expect(end('2026-10-15T20:00:00Z')).toBe('2026-10-15T22:00:00.000Z');
    expect(end('2026-10-16T20:00:00Z')).toBe('2027-10-15T22:00:00.000Z');
  });
});
