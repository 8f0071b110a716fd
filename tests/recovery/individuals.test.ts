/**
 * Forecasts of a season of individual insects (simulators/), which is another model than the forecast's own:
 * random times, plants, a grower who forgets. Compared with "as last time", on log(1 + count).
 */
import { describe, expect, it } from 'vitest';
import { forecast } from '../../services/model/forecast.ts';
import { crpsOfQuantiles } from '../../services/model/scoring/crps.ts';
import { type Season, seasonSchema, type TrapCount } from '../../services/model/season.ts';
import { play } from '../../simulators/play.ts';
import { scenarioByName } from '../../simulators/scenarios.ts';

const weekMs = 7 * 86_400_000;
const levels = { q025: 0.025, q10: 0.1, q25: 0.25, q50: 0.5, q75: 0.75, q90: 0.9, q975: 0.975 } as const;

/** What the grower and an hourly sensor would have written down. */
function written(name: string, seed: number, weeks: number): { season: Season; startMs: number } {
  const scenario = scenarioByName(name);
  const startMs = Date.parse(scenario.startsAt);
  const readings: Season['readings'] = [];
  const trapCounts: TrapCount[] = [];
  for (const event of play(scenario, seed)) {
    if (event.atMs > startMs + weeks * weekMs) break;
    if (event.what === 'message' && event.topic.endsWith('readings/bench') && event.atMs % 3_600_000 === 0) {
      const temperatureC = /"temperatureC":\s*(-?[\d.]+)/.exec(event.payload)?.[1];
      if (temperatureC === undefined) continue;
      readings.push({
        sensorId: 'bench',
        time: new Date(event.atMs).toISOString(),
        temperatureC: Number(temperatureC),
      });
    }
    if (event.what === 'record' && event.noun === 'trap-counts') trapCounts.push(event.data as TrapCount);
  }
  const season = seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: { ...scenario.place, pests: ['trialeurodes-vaporariorum'] },
    plantings: [scenario.planting],
    readings,
    trapCounts,
  });
  return { season, startMs };
}

const log1p = (count: unknown) => Math.log1p(count as number);

describe('a season of individuals', () => {
  const { season, startMs } = written('spring-whitefly', 5, 22);
  const pairs = [8, 12, 16, 18].flatMap((week) => {
    const asOfMs = startMs + week * weekMs + 60_000;
    const { weeks } = forecast(season, new Date(asOfMs).toISOString(), { members: 150 }).pests[0]!;
    const earlier = season.trapCounts.filter((count) => Date.parse(count.time) <= asOfMs);
    const last = earlier.filter((count) => count.time === earlier.at(-1)!.time);
    const lastMean = last.reduce((sum, count) => sum + log1p(count.counts.whitefly), 0) / last.length;
    return [1, 2, 3, 4].flatMap((lead) => {
      const range = weeks[lead - 1]!.count;
      const whole = season.trapCounts.filter(
        (count) =>
          Math.abs(Date.parse(count.time) - asOfMs - lead * weekMs) < 86_400_000 &&
          count.countedFraction === 1 &&
          Math.abs(count.exposureDays - 7) < 0.5,
      );
      return whole.map((count) => {
        const seen = log1p(count.counts.whitefly);
        const quantiles = Object.entries(levels).map(([key, level]) => ({
          level,
          value: log1p(range[key as keyof typeof levels]),
        }));
        const inside = seen >= log1p(range.q10) && seen <= log1p(range.q90);
        return { ours: crpsOfQuantiles(quantiles, seen), asLastTime: Math.abs(lastMean - seen), inside };
      });
    });
  });
  const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / values.length;

  it('is forecast better than by "as last time"', () => {
    expect(pairs.length).toBeGreaterThan(12);
    expect(mean(pairs.map((pair) => pair.ours))).toBeLessThan(
      0.8 * mean(pairs.map((pair) => pair.asLastTime)),
    );
  });

  it('lies within 8 of 10 at least 7 times of 10', () => {
    expect(mean(pairs.map((pair) => (pair.inside ? 1 : 0)))).toBeGreaterThan(0.7);
  });
});
