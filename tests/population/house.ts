/** A world of constant warmth and a member at the middle of everything, for tests. */
import type { HourlyPath } from '../../services/model/population/dayTables.ts';
import type { PestParameters } from '../../services/model/population/pest.ts';
import { createWorld, type World } from '../../services/model/population/world.ts';
import type { PestId, Release, Treatment } from '../../services/model/season.ts';
import { enemyTraits, pestTraits, speciesById } from '../../services/model/species/catalogue.ts';

export function houseAt(
  pestId: PestId,
  temperatureC: number,
  days: number,
  more: { releases?: Release[]; treatments?: Treatment[] } = {},
): World {
  return createWorld({
    pestId,
    startMs: 0,
    areaM2: 10,
    path: constantPath(temperatureC, days),
    releases: more.releases ?? [],
    treatments: more.treatments ?? [],
  });
}

/** The same temperature at all hours, light from five to twenty o'clock. */
export function constantPath(temperatureC: number, days: number): HourlyPath {
  return {
    hourlyC: new Float64Array(days * 24).fill(temperatureC),
    daylight: Uint8Array.from({ length: days * 24 }, (_, hour) => (hour % 24 >= 5 && hour % 24 < 20 ? 1 : 0)),
  };
}

/** Records as they stand, nobody coming or leaving, never crowded. */
export function middleMember(world: World, more: Partial<PestParameters> = {}): PestParameters {
  return {
    speed: 1,
    offsetC: new Float64Array(world.days),
    eggsPerDay: pestTraits(speciesById(world.pestId)).adult.eggsPerDay,
    hazardFactor: 1,
    lifeFactor: 1,
    heatFactor: 1,
    crowdingPerM2: 1e12,
    arrivalDay: Number.POSITIVE_INFINITY,
    startingPerM2: 1,
    immigrantsPerDay: 0,
    weeklyDisturbance: new Float64Array(Math.ceil(world.days / 7)),
    enemies: world.enemies.map((enemy) => ({
      searchM2PerDay: 0.1,
      establishes: enemyTraits(speciesById(enemy.id)).release.establishes,
    })),
    ...more,
  };
}

export const allDays = (world: World): Uint8Array => new Uint8Array(world.days).fill(1);
