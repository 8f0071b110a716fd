/** Simulated releases in a place of constant warmth, as the release trials need them. */
import type { EnemyParameters } from '../../../services/model/population/enemy.ts';
import type { PestParameters } from '../../../services/model/population/pest.ts';
import type { EnemyTrajectory, PestCourse } from '../../../services/model/population/trajectory.ts';
import { createWorld } from '../../../services/model/population/world.ts';
import type { EnemyId, PestId, Release } from '../../../services/model/season.ts';
import { constantPath, courseIn, middleMember } from '../../population/house.ts';

const dayMs = 86_400_000;

/** Released per m2 of ground, on a day. */
export const released = (enemy: EnemyId, perM2: number, day = 0, form = 'adults'): Release => ({
  id: `${enemy}-${day}`,
  enemy,
  form,
  number: perM2,
  time: new Date(day * dayMs).toISOString(),
  aliveShare: 1,
});

export interface Trial {
  pest: PestId;
  temperatureC: number;
  days: number;
  releases: readonly Release[];
  /** What is known of the pest in the trial; the rest as in its record. */
  start: Partial<PestParameters>;
  ants?: boolean;
}

export interface Outcome {
  track: PestCourse;
  /** All of the pest by day. */
  all: Float64Array;
  of: (enemy: EnemyId) => EnemyTrajectory;
}

/** The trial on one m2 of ground by the forecast's population; all that are released settle. */
export function outcomeOf({ pest, temperatureC, days, releases, start, ants = false }: Trial): Outcome {
  const world = createWorld([pest], {
    startMs: 0,
    areaM2: 1,
    path: constantPath(temperatureC, days),
    releases,
    treatments: [],
    ants: new Uint8Array(days).fill(ants ? 1 : 0),
  });
  const enemies = world.enemies.map(({ traits }): EnemyParameters => {
    return { searchM2PerDay: traits.searchM2PerDay, establishes: 1 };
  });
  const track = courseIn(world, middleMember(world, { ...start, enemies }));
  return {
    track,
    all: track.adults.map((adults, day) => adults + track.young[day]!),
    of: (enemy) => track.enemies[world.enemies.findIndex(({ id }) => id === enemy)]!,
  };
}

/** First day from `from` on that answers; `never` if none does. */
export function dayWhen(series: Float64Array, from: number, test: (value: number) => boolean) {
  const day = series.findIndex((value, at) => at >= from && test(value));
  return day < 0 ? 'never' : day;
}

const whitefly = { pest: 'trialeurodes-vaporariorum', temperatureC: 22 } as const;
const encarsia = 'encarsia-formosa';

/** Hosts laid into in a day by one Encarsia a m2, among whitefly of which seven in ten are young. */
export function attackedByEncarsia(temperatureC: number): number {
  const releases = [released(encarsia, 1)];
  const start = { startingPerM2: 150, crowdingPerM2: 300 };
  return outcomeOf({ ...whitefly, temperatureC, days: 1, releases, start }).of(encarsia).hidden[0]!;
}

/**
 * Parasitised share of the young after four weeks: 30 nymphs a leaf, 18 leaves a plant, 2.5 plants a m2 at 22 °C
 * (assumed: not printed), wasps put in every 7/3 days.
 */
export function parasitisedShare(waspsPerPlant: number): number {
  const plantsPerM2 = 2.5;
  const times = Array.from({ length: 12 }, (_, i) => Math.floor((i * 7) / 3));
  // Seven in ten of those put in are young (pest.ts).
  const { track, of } = outcomeOf({
    ...whitefly,
    days: 29,
    releases: times.map((day) => released(encarsia, waspsPerPlant * plantsPerM2, day)),
    start: { startingPerM2: (30 * 18 * plantsPerM2) / 0.7, crowdingPerM2: 300 },
  });
  const parasitised = of(encarsia).hidden[28]! + of(encarsia).visible[28]!;
  return parasitised / (parasitised + track.scales[28]!);
}

/** Whitefly adults by day at 22 °C after six Encarsia a m2 in one release, or in six weekly ones. */
export const afterReleases = (parts: 1 | 6) =>
  outcomeOf({
    ...whitefly,
    days: 160,
    releases: Array.from({ length: parts }, (_, i) =>
      released(encarsia, 6 / parts, 14 + 7 * i, 'pupa on card'),
    ),
    start: { startingPerM2: 1, crowdingPerM2: 300 },
  }).track.adults;
export const summed = (series: Float64Array) => series.reduce((sum, value) => sum + value, 0);

/** Aphids left after two weeks at 15 °C of five a tree; a tree stands on 1 m2. */
export function aphidsLeft(larvaePerTree: number, ants = false): number {
  const { all } = outcomeOf({
    pest: 'myzus-persicae',
    temperatureC: 15,
    days: 15,
    releases: larvaePerTree > 0 ? [released('adalia-bipunctata', larvaePerTree, 0, 'larvae')] : [],
    start: { startingPerM2: 5, crowdingPerM2: 300 },
    ants,
  });
  return all[14]!;
}
