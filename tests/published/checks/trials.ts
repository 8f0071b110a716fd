/** Simulated releases in a house of constant warmth, as the release trials of releases.ts need them. */
import type { EnemyId, PestId, Release } from '../../../services/model/season.ts';
import { courseIn, houseAt, middleMember } from '../../population/house.ts';

/** Ground of the simulated house (tests/population/house.ts). */
const areaM2 = 10;
const dayMs = 86_400_000;

const release = (enemy: EnemyId, perM2: number, day: number, form: string): Release => ({
  id: `${enemy}-${day}`,
  enemy,
  form,
  number: perM2 * areaM2,
  time: new Date(day * dayMs).toISOString(),
  aliveShare: 1,
});

/** A simulated house of constant warmth with these releases, and the track of the enemy. */
function trial(pest: PestId, temperatureC: number, days: number, startingPerM2: number, releases: Release[]) {
  const world = houseAt(pest, temperatureC, days, { releases });
  const enemies = world.enemies.map(({ traits }) => ({
    searchM2PerDay: traits.searchM2PerDay,
    establishes: 1,
  }));
  const member = middleMember(world, { startingPerM2, crowdingPerM2: 300, enemies });
  const track = courseIn(world, member);
  const enemy = track.enemies[world.enemies.findIndex(({ id }) => id === releases[0]?.enemy)];
  return { track, enemy };
}

/** Hosts laid into in a day by one Encarsia a m2, among whitefly of which seven in ten are young. */
export function attackedByEncarsia(temperatureC: number): number {
  const { enemy } = trial('trialeurodes-vaporariorum', temperatureC, 1, 150, [
    release('encarsia-formosa', 1, 0, 'adults'),
  ]);
  return enemy!.hidden[0]!;
}

/**
 * Parasitised share of the young after four weeks: 30 nymphs a leaf, 18 leaves a plant, 2.5 plants a m2 at 22 °C
 * (assumed: not printed), wasps put in every 7/3 days.
 */
export function parasitisedShare(waspsPerPlant: number): number {
  const plantsPerM2 = 2.5;
  const times = Array.from({ length: 12 }, (_, i) => Math.floor((i * 7) / 3));
  const releases = times.map((day) =>
    release('encarsia-formosa', waspsPerPlant * plantsPerM2, day, 'adults'),
  );
  // Seven in ten of those put in are young (pest.ts).
  const { track, enemy } = trial(
    'trialeurodes-vaporariorum',
    22,
    29,
    (30 * 18 * plantsPerM2) / 0.7,
    releases,
  );
  const parasitised = enemy!.hidden[28]! + enemy!.visible[28]!;
  return parasitised / (parasitised + track.scales[28]!);
}

/** Whitefly adults by day at 22 °C after six Encarsia a m2 in one release, or in six weekly ones. */
export const afterReleases = (parts: 1 | 6) =>
  trial(
    'trialeurodes-vaporariorum',
    22,
    160,
    1,
    Array.from({ length: parts }, (_, i) =>
      release('encarsia-formosa', 6 / parts, 14 + 7 * i, 'pupa on card'),
    ),
  ).track.adults;
export const summed = (series: Float64Array) => series.reduce((sum, value) => sum + value, 0);

/** Share of five aphids a tree left after two weeks at 15 °C, against none released; a tree stands on 1 m2. */
export function aphidsLeft(larvaePerTree: number): number {
  const after = (releases: Release[]) => {
    const { track } = trial('myzus-persicae', 15, 15, 5, releases);
    return track.adults[14]! + track.young[14]!;
  };
  return after([release('adalia-bipunctata', larvaePerTree, 0, 'larvae')]) / after([]);
}
