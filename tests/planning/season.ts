/** Small invented seasons for the tests of planning; nothing here is measured. */
import type { Fit } from '../../services/model/forecast.ts';
import {
  type Forecast,
  type PestForecast,
  type PestId,
  type Season,
  seasonSchema,
} from '../../services/model/index.ts';
import { soldAs } from '../../services/model/planning/parcel.ts';
import { leafKindOf, seenAs } from '../../services/model/species/signs.ts';

export const asOf = '2026-05-13T09:00:00Z';
export const asOfMs = Date.parse(asOf);

export function invented(changes: Partial<Record<keyof Season, unknown>> = {}, place: object = {}): Season {
  return seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: 'pear-yard',
      name: 'The pear yard house',
      kind: 'glasshouse',
      areaM2: 12,
      latitudeDeg: 51,
      longitudeDeg: 0,
      timeZone: 'Europe/London',
      pests: ['trialeurodes-vaporariorum'],
      limits: { 'trialeurodes-vaporariorum': 30 },
      seasonEnd: '10-15',
      supplier: {
        leadDays: 2,
        cutoffHour: 12,
        orderWeekdays: [1, 2, 3, 4, 5],
        deliveryWeekdays: [3],
        currency: 'EUR',
        parcelFee: 6,
        pricePerAnimal: { 'amblyseius-swirskii': 0.02, 'encarsia-formosa': 0.15 },
      },
      ...place,
    },
    traps: [{ id: 'door', name: 'by the door', hungAt: '2026-04-01T08:00:00Z' }],
    trapCounts: [count('2026-04-29', 4), count('2026-05-06', 9), count('2026-05-13', 14)],
    ...changes,
  });
}

export const count = (day: string, whitefly: number, more: object = {}) => ({
  id: `count-${day}`,
  trapId: 'door',
  time: `${day}T08:00:00Z`,
  exposureDays: 7,
  counts: { whitefly },
  ...more,
});

const flat = (value: number) => ({
  q025: value,
  q10: value,
  q25: value,
  q50: value,
  q75: value,
  q90: value,
  q975: value,
});
const flatDate = (value: string) => ({
  q025: value,
  q10: value,
  q25: value,
  q50: value,
  q75: value,
  q90: value,
  q975: value,
});

/** With a limit of 30 a trap and week, or of 3 leaves of ten. */
function countedAs(pest: PestId): PestForecast['counted'] {
  const { trap } = seenAs(pest);
  return trap
    ? { unit: 'trap-week', kind: trap, limit: 30 }
    : { unit: 'ten-leaves', kind: leafKindOf(pest), limit: 3 };
}

/** A hundred possible seasons, so many of which are eight weeks over the limit. */
const possible = (chance: number) =>
  Array.from({ length: 100 }, (_, i) =>
    i < Math.round(100 * chance) ? { weeksOver: 8, damage: 0.8 } : { weeksOver: 0, damage: 0 },
  );

/** A fit that answers with fixed chances: planning is tested apart from the forecast. */
export function fixedFit(
  chances: { left: number; released?: number; washed?: number; washedThen?: number; catchNow?: number },
  temperature: { minC: number; maxC: number } = { minC: 14, maxC: 26 },
  pest: PestId = 'trialeurodes-vaporariorum',
): Fit {
  const ahead = (probability: number): PestForecast => ({
    pest,
    counted: countedAs(pest),
    past: [],
    weeks: [
      {
        end: '2026-05-20T09:00:00Z',
        count: flat(chances.catchNow ?? 15),
        adultsPerM2: flat(5),
        youngPerM2: flat(50),
        probabilityOverLimit: probability,
      },
    ],
    passesLimit: { probability, by: '2026-07-22T09:00:00Z', when: flatDate('2026-06-03T09:00:00Z') },
    probabilityPresent: 1,
    waves: [{ generation: 2, adults: flatDate('2026-06-01T09:00:00Z') }],
    enemies: [],
    effectiveSampleSize: 100,
  });
  const outlook = Array.from({ length: 40 }, (_, index) => {
    const day = new Date(Date.parse('2026-05-13') + index * 86_400_000).toISOString().slice(0, 10);
    const meanC = (temperature.minC + temperature.maxC) / 2;
    return { day, minC: flat(temperature.minC), meanC: flat(meanC), maxC: flat(temperature.maxC) };
  });
  const forecast: Forecast = {
    placeId: 'pear-yard',
    asOf,
    seed: 1,
    members: 10,
    temperature: { days: [], outlook },
    ledger: [],
    pests: [ahead(chances.left)],
    doubts: [],
  };
  return {
    forecast,
    read: new Map(),
    ahead: () => [],
    leafTotals: () => [],
    withMore: (_, { releases = [], treatments = [] }) => {
      const { left, released = left, washed = left, washedThen = released } = chances;
      if (treatments.length === 0) return ahead(released);
      return ahead(releases.length > 0 ? washedThen : washed);
    },
    overLimit: (_, { releases = [], treatments = [] }) => {
      const { left, washed = left, washedThen } = chances;
      const { released = left } =
        treatments.length > 0 && washedThen !== undefined ? { released: washedThen } : chances;
      const first = releases[0];
      if (!first) return possible(treatments.length > 0 ? washed : left);
      const share = Math.min(1, first.number / (12 * soldAs(first.enemy).perM2));
      const weeks = Math.min(5, (Date.parse(first.time) - asOfMs) / 7 / 86_400_000);
      return possible(left + (released - left) * share * (1 - weeks / 50));
    },
    without: () => ({ ends: [], counts: [[]], numbers: [[]] }),
  };
}
