/** Totals under leaves, played again count by count: nothing later is known, and the forecast says what is there. */
import { describe, expect, it } from 'vitest';
import { fit as fitSeason, replayTotals, type Season, seasonSchema } from '../../services/model/index.ts';
import { weightedQuantile } from '../../services/model/numerics/quantiles.ts';

const dayMs = 86_400_000;
const startMs = Date.parse('2026-04-06T09:00:00Z');
const at = (days: number) => new Date(startMs + days * dayMs).toISOString();
const pest = 'myzus-persicae';

/** Forty leaves every four days, in a room whose thermometer says 19 and 21 °C in turn. */
function seasonOf(totals: readonly number[]): Season {
  return seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: 'bean-room',
      name: 'Bean room',
      kind: 'room',
      areaM2: 2,
      latitudeDeg: 10,
      longitudeDeg: 0,
      timeZone: 'UTC',
      pests: [pest],
      limits: {},
      seasonEnd: '12-15',
    },
    sensors: [{ id: 'shelf', name: 'Shelf' }],
    readings: Array.from({ length: 12 * 4 * totals.length }, (_, i) => ({
      sensorId: 'shelf',
      time: at(i / 12),
      temperatureC: i % 2 ? 19 : 21,
    })),
    leafChecks: totals.map((total, i) => ({
      id: `look-${i}`,
      time: at(4 * i),
      leaves: 40,
      seen: [{ kind: 'aphid', total }],
    })),
  });
}

const options = { members: 40, seed: 3 };
const totals = [4, 9, 15, 30, 60, 90, 160, 240, 300];

describe('totals under leaves, played again', () => {
  const scored = replayTotals(seasonOf(totals), pest, options);

  it('holds each forecast from the fourth count on against the first, second and fourth after it', () => {
    const firsts = scored.filter(({ asOf }) => asOf === at(12));
    expect(firsts.map(({ lead, observed, time }) => [lead, observed, time])).toEqual([
      [1, 60, at(16)],
      [2, 90, at(20)],
      [4, 240, at(28)],
    ]);
    // Counts four to eight of nine have 3, 3, 2, 2 and 1 such counts after them.
    expect(scored).toHaveLength(11);
  });

  it('does not change when something else is counted later', () => {
    const changed = seasonOf([...totals.slice(0, 5), 0, 0, 0, 0]);
    const again = replayTotals(changed, pest, options);
    const first = ({ asOf, lead }: { asOf: string; lead: number }) => asOf === at(12) && lead === 1;
    expect(again.find(first)).toEqual(scored.find(first));
    expect(again.find(({ asOf, lead }) => asOf === at(12) && lead === 2)!.observed).toBe(0);
  });

  it('draws twice as many from twice the leaves, and more where more were counted', () => {
    const middle = (season: Season, leaves: number) => {
      const made = fitSeason(season, at(4 * (season.leafChecks.length - 1)), { members: 200, seed: 3 });
      const [sample] = made.leafTotals(pest, [{ timeMs: startMs + 4 * totals.length * dayMs, leaves }]);
      return weightedQuantile(sample!.values, sample!.weights, 0.5);
    };
    const few = middle(seasonOf(totals), 40);
    expect(few).toBeGreaterThan(100);
    expect(few).toBeLessThan(1500);
    expect(middle(seasonOf(totals), 80) / few).toBeGreaterThan(1.5);
    expect(middle(seasonOf(totals), 80) / few).toBeLessThan(2.7);
    expect(middle(seasonOf(totals.map((total) => 5 * total)), 40)).toBeGreaterThan(2 * few);
  });
});
