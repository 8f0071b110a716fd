/** A small invented season: hourly readings, two traps counted each week. */
import { type Season, seasonSchema } from '../../services/model/season.ts';

const hourMs = 3_600_000;
export const startMs = Date.parse('2026-04-06T00:00:00+02:00');
export const onDay = (days: number): string => new Date(startMs + days * 24 * hourMs).toISOString();

export interface SampleOptions {
  weeks: number;
  /** Whitefly (and aphids) by week on both traps; undefined = not counted. */
  whitefly: readonly (number | undefined)[];
  aphids?: readonly number[];
  meanC?: number;
  more?: Partial<Season>;
  limit?: number;
}

export function sampleSeason({
  weeks,
  whitefly,
  aphids,
  meanC = 21,
  more = {},
  limit = 20,
}: SampleOptions): Season {
  const readings = Array.from({ length: weeks * 7 * 24 }, (_, hour) => ({
    sensorId: 'bench',
    time: new Date(startMs + hour * hourMs).toISOString(),
    temperatureC: meanC + 6 * Math.cos((((hour % 24) - 14) / 24) * 2 * Math.PI) + 2 * Math.sin(hour / 50),
  }));
  const trapCounts = whitefly.flatMap((caught, i) =>
    caught === undefined
      ? []
      : ['north', 'south'].map((trapId) => ({
          id: `${trapId}-${i}`,
          trapId,
          time: onDay((i + 1) * 7 - 0.5),
          exposureDays: i === 0 ? 6.5 : 7,
          counts: { whitefly: caught, ...(aphids ? { aphid: aphids[i] ?? 0 } : {}) },
        })),
  );
  return seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: 'house',
      name: 'House',
      kind: 'glasshouse',
      areaM2: 12,
      latitudeDeg: 50,
      longitudeDeg: 5,
      timeZone: 'Europe/Paris',
      pests: aphids ? ['trialeurodes-vaporariorum', 'myzus-persicae'] : ['trialeurodes-vaporariorum'],
      limits: { 'trialeurodes-vaporariorum': limit },
      seasonEnd: '10-15',
    },
    plantings: [{ id: 'p', crop: 'Tomato', plants: 10 }],
    sensors: [{ id: 'bench', name: 'Bench' }],
    readings,
    traps: ['north', 'south'].map((id) => ({ id, name: id, hungAt: onDay(0) })),
    trapCounts,
    ...more,
  });
}
