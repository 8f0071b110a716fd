/** A world of constant warmth and a member at the middle of everything, for tests. */
import type { HourlyPath } from '../../services/model/population/dayTables.ts';
import type { EnemyParameters } from '../../services/model/population/enemy.ts';
import type { PestParameters } from '../../services/model/population/pest.ts';
import { type MemberParameters, simulate } from '../../services/model/population/simulate.ts';
import { courseOf, type PestCourse } from '../../services/model/population/trajectory.ts';
import { createWorld, type World } from '../../services/model/population/world.ts';
import type { PestId, Release, Treatment } from '../../services/model/season.ts';

export function houseAt(
  pestId: PestId,
  temperatureC: number,
  days: number,
  more: { releases?: Release[]; treatments?: Treatment[]; cards?: Float64Array } = {},
): World {
  return createWorld([pestId], {
    startMs: 0,
    areaM2: 10,
    path: constantPath(temperatureC, days),
    releases: more.releases ?? [],
    treatments: more.treatments ?? [],
    ...(more.cards && { cards: more.cards }),
  });
}

/** The same temperature at all hours, light from five to twenty o'clock. */
export function constantPath(temperatureC: number, days: number): HourlyPath {
  return {
    hourlyC: new Float64Array(days * 24).fill(temperatureC),
    daylight: Uint8Array.from({ length: days * 24 }, (_, hour) => (hour % 24 >= 5 && hour % 24 < 20 ? 1 : 0)),
  };
}

/** Records as they stand, nobody coming or leaving, never crowded; `more` holds for every pest. */
export function middleMember(
  world: World,
  more: Partial<PestParameters> & { enemies?: readonly EnemyParameters[] } = {},
): MemberParameters {
  const { enemies, ...pest } = more;
  return {
    offsetC: new Float64Array(world.days),
    pests: world.pests.map(({ traits }) => ({
      speed: 1,
      eggsPerDay: traits.adult.eggsPerDay,
      hazardFactor: 1,
      lifeFactor: 1,
      heatFactor: 1,
      crowdingPerM2: 1e12,
      arrivalDay: Number.POSITIVE_INFINITY,
      startingPerM2: 1,
      arrivingPerM2: 0,
      immigrantsPerDay: 0,
      lastArrivalDay: Number.POSITIVE_INFINITY,
      goneBelowPerM2: 0,
      qM2PerDay: 0,
      weeklyDisturbance: new Float64Array(Math.ceil(world.days / 7)),
      ...pest,
    })),
    enemies:
      enemies ??
      world.enemies.map(({ traits }) => ({
        searchM2PerDay: traits.searchM2PerDay,
        establishes: traits.release?.establishes ?? 1,
      })),
  };
}

/** The first pest of a world over all its days, all of them written down. */
export const courseIn = (world: World, member = middleMember(world), days = world.days): PestCourse =>
  courseOf(simulate(world, member, days, allDays(world)), 0);

export const allDays = (world: World): Uint8Array => new Uint8Array(world.days).fill(1);
