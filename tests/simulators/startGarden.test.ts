import { describe, expect, test } from 'vitest';
import { type Season, seasonSchema } from '../../services/model/index.ts';
import { newColony } from '../../simulators/colony.ts';
import { species } from '../../simulators/species.ts';
import { startGarden, type VirtualGarden, weekMs } from '../../simulators/startGarden.ts';
import { trialByName, trials } from '../../simulators/trials.ts';
import { emergenceOfYoung } from '../../simulators/truth.ts';

function played(trial: string, seed: number, each?: (garden: VirtualGarden) => void): VirtualGarden {
  const garden = startGarden(trialByName(trial), seed);
  while (garden.week() < garden.weeks) {
    garden.advanceWeek();
    each?.(garden);
  }
  return garden;
}
const thrips = (season: Season) => season.trapCounts.map((count) => [count.time, count.counts.thrips]);
const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0);

describe.each(trials.map(({ name }) => [name]))('%s', (name) => {
  const garden = played(name, 1);
  const season = garden.season();

  test('is a season the season file takes, of 26 weeks', () => {
    expect(seasonSchema.parse(season)).toEqual(season);
    expect(garden.weeks).toBe(26);
    expect(garden.truth.days.whitefly.adults).toHaveLength(182);
  });

  test('same seed, same season; another seed, another', () => {
    expect(played(name, 1).season()).toEqual(season);
    expect(played(name, 2).season().readings).not.toEqual(season.readings);
  });
});

test('what is counted scatters around what was expected on the cards', () => {
  // Card noise of k around 2 and three cards a week: the sum of eight seasons lies within a fifth.
  const seasons = Array.from({ length: 8 }, (_, seed) => played('summer-thrips', 20 + seed));
  const ratios = seasons.map(({ truth, season }) => {
    const counted = season().trapCounts.filter(
      ({ exposureDays, countedFraction }) => exposureDays === 7 && countedFraction === 1,
    );
    const expected = counted.map(({ time, trapId }) => {
      const card = truth.cards.find((one) => one.endMs === Date.parse(time) && one.trapId === trapId);
      return card!.mean.thrips!;
    });
    return sum(counted.map(({ counts }) => counts.thrips as number)) / sum(expected);
  });
  expect(Math.abs(sum(ratios) / ratios.length - 1)).toBeLessThan(0.2);
});

describe('another plan in the same season', () => {
  const plain = played('summer-thrips', 3);
  const acted = played('summer-thrips', 3, (garden) => {
    if (garden.week() !== 9) return;
    const fridayMs = garden.nowMs() + 4 * 86_400_000;
    garden.act({ do: 'release', enemy: 'neoseiulus-cucumeris', number: 20_000, atMs: fridayMs, price: 40 });
  });

  test('has the same weather and the same counts before', () => {
    expect(acted.season().readings).toEqual(plain.season().readings);
    const earlier = (garden: VirtualGarden) =>
      thrips(garden.season(Date.parse('2026-04-13T09:00:00Z') + 9 * weekMs));
    expect(earlier(acted)).toEqual(earlier(plain));
  });

  test('writes an order down at once and the release when it comes', () => {
    const then = acted.season(Date.parse('2026-04-13T09:00:00Z') + 9 * weekMs);
    expect(then.orders).toMatchObject([{ enemy: 'neoseiulus-cucumeris', number: 20_000, price: 40 }]);
    expect(then.orders[0]!.arrivedAt).toBeUndefined();
    expect(then.releases).toEqual([]);
    const { orders, releases } = acted.season();
    expect(releases).toHaveLength(1);
    expect(releases[0]!.time).toBe(orders[0]!.arrivedAt);
    expect(Date.parse(releases[0]!.time) - Date.parse(orders[0]!.orderedAt)).toBe(4 * 86_400_000);
  });

  test('holds the pest that it is for', () => {
    const days = (garden: VirtualGarden) => sum(garden.truth.days.thrips.adults);
    expect(days(acted)).toBeLessThan(0.5 * days(plain));
  });
});

describe('what goes wrong goes wrong', () => {
  test('no pest is none, whatever the grower takes for one', () => {
    const { truth, season } = played('no-pest', 4);
    for (const { adults, young } of Object.values(truth.days)) expect(sum(adults) + sum(young)).toBe(0);
    expect(sum(season().trapCounts.map(({ counts }) => Number(counts.whitefly ?? 0)))).toBeGreaterThan(0);
  });

  test('the air outdoors is told as measured, and ten days ahead only once that was said', () => {
    const { season, nowMs, garden } = played('heat-wave', 1);
    const { outdoor } = season();
    expect(outdoor.every(({ time, issuedAt }) => Date.parse(issuedAt ?? time) <= nowMs())).toBe(true);
    const errors = (fromDay: number, toDay: number) =>
      outdoor.flatMap(({ time, temperatureC, issuedAt }) => {
        const leadDays = issuedAt ? (Date.parse(time) - Date.parse(issuedAt)) / 86_400_000 : -1;
        if (leadDays < fromDay || leadDays > toDay) return [];
        const hour = Math.floor((Date.parse(time) - garden.startMs) / 3_600_000);
        const real = garden.weather[hour];
        return real ? [(temperatureC - real.outdoorC) ** 2] : [];
      });
    const sd = (squares: number[]) => Math.sqrt(sum(squares) / squares.length);
    expect(sd(errors(0, 1))).toBeGreaterThan(0.7);
    expect(sd(errors(0, 1))).toBeLessThan(1.7);
    expect(sd(errors(9, 10))).toBeGreaterThan(2.2);
    expect(sd(errors(9, 10))).toBeLessThan(4.6);
    expect(errors(10.01, 99)).toEqual([]);
    expect(played('unforeseen-heat', 1).season().outdoor).toEqual([]);
  });

  test('a missed month is a gap of five weeks with lost cards at its end, not a row of zeros', () => {
    const times = [
      ...new Set(
        played('missed-month', 1)
          .season()
          .trapCounts.map(({ time }) => time),
      ),
    ];
    const gaps = times.slice(1).map((time, n) => (Date.parse(time) - Date.parse(times[n]!)) / weekMs);
    expect(Math.max(...gaps)).toBe(5);
    const lost = played('missed-month', 1)
      .season()
      .trapCounts.filter(({ card }) => card === 'lost');
    expect(lost).toHaveLength(3);
    expect(lost.every(({ counts }) => Object.keys(counts).length === 0)).toBe(true);
  });

  test('a dead sensor is silent for three weeks', () => {
    const times = played('dead-sensor', 1)
      .season()
      .readings.map(({ time }) => Date.parse(time));
    const gaps = times.slice(1).map((time, n) => (time - times[n]!) / 3_600_000);
    expect(Math.max(...gaps)).toBe(21 * 24 + 1);
  });

  test('a heat wave is hotter than the same days without it', () => {
    const hottest = (name: string) => {
      const from = Date.parse('2026-06-15T09:00:00Z');
      const warm = played(name, 1)
        .season()
        .readings.filter(({ time }) => {
          const day = (Date.parse(time) - from) / 86_400_000;
          return day >= 0 && day < 8;
        });
      return Math.max(...warm.map(({ temperatureC }) => temperatureC));
    };
    expect(hottest('heat-wave')).toBeGreaterThan(hottest('summer-thrips') + 3);
  });
});

test('the wave ahead of a day is the middle of those who were young then', () => {
  const colony = newColony('whitefly', species.whitefly.biology);
  // Day of emergence, then number by day of birth: on day 10 the 4 born on day 12 were not there yet.
  colony.emerged.set(9, new Map([[1, 50]]));
  colony.emerged.set(20, new Map([[3, 10]]));
  colony.emerged.set(24, new Map([[5, 30]]));
  colony.emerged.set(30, new Map([[12, 400]]));
  expect(emergenceOfYoung(colony, 0, 10)).toBe(23.5 * 86_400_000);
  expect(emergenceOfYoung(colony, 0, 40)).toBeUndefined();
});
