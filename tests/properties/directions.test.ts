/**
 * Directions no biology may break, under generated seasons: warmer is earlier below the best temperature, more
 * enemies are never more prey in the next week, ants never help the enemy, nor does a spray or what stays of it.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clockRate } from '../../services/model/population/clock.ts';
import { addBirths, growTo, noCohorts } from '../../services/model/population/cohorts.ts';
import { dayValue, gridPosition, type HourlyPath } from '../../services/model/population/dayTables.ts';
import { standingShares } from '../../services/model/population/stages.ts';
import { treatmentEffects } from '../../services/model/population/treatments.ts';
import {
  createWorld,
  huntersOf,
  type World,
  withInterventions,
} from '../../services/model/population/world.ts';
import {
  type EnemyId,
  type PestId,
  pestIds,
  type Release,
  type Treatment,
  type TreatmentKind,
} from '../../services/model/season.ts';
import { enemyTraits, speciesById } from '../../services/model/species/catalogue.ts';
import { constantPath, courseIn, middleMember } from '../population/house.ts';

const runs = { seed: 20260513, numRuns: 60 };
const dayMs = 86_400_000;
const eventDay = 30;

/** Weather in a house: daily means that wander, a swing from night to day. */
const weather = (days: number) =>
  fc.record({
    means: fc.array(fc.double({ min: 10, max: 28, noNaN: true }), { minLength: days, maxLength: days }),
    swing: fc.double({ min: 0, max: 8, noNaN: true }),
  });

type Weather = { means: number[]; swing: number };

function pathOf({ means, swing }: Weather, warmer = 0, highestC = 60): HourlyPath {
  const path = constantPath(0, means.length);
  path.hourlyC.forEach((_, hour) => {
    const wave = Math.sin((2 * Math.PI * ((hour % 24) - 8)) / 24);
    path.hourlyC[hour] = Math.min(highestC, means[Math.floor(hour / 24)]! + swing * wave + warmer);
  });
  return path;
}

const worldOn = (pestId: PestId, path: HourlyPath): World =>
  createWorld([pestId], { startMs: 0, areaM2: 10, path, releases: [], treatments: [] });

/** Temperature of the fastest development, its lowest where it is flat. */
function bestC(pestId: PestId): number {
  const rate = clockRate(speciesById(pestId).development);
  const tried = Array.from({ length: 400 }, (_, i) => i / 10);
  return tried.reduce((best, temperatureC) =>
    rate(temperatureC) > rate(best) + 1e-12 ? temperatureC : best,
  );
}

/** First day at whose end half of those born on day 0 have become adult, of those who ever do. */
function halfGrownDay(world: World): number {
  const { table, clockPerDay } = world.pests[0]!;
  const cohorts = noCohorts(table, standingShares(table.stages, 0), 1);
  addBirths(cohorts, 0, 1);
  let grown = 0;
  for (let day = 0; day < world.days; day++) {
    grown += growTo(cohorts, cohorts.clock + dayValue(clockPerDay, day, gridPosition(0)));
    if (grown >= 0.5) return day;
  }
  return Number.POSITIVE_INFINITY;
}

it('warmer is earlier, below the best temperature', () => {
  const pests = fc.constantFrom(...pestIds);
  fc.assert(
    fc.property(pests, weather(60), fc.double({ min: 0.2, max: 6, noNaN: true }), (pestId, each, warmer) => {
      const best = bestC(pestId);
      const [cool, warm] = [0, warmer].map((by) => worldOn(pestId, pathOf(each, by, best)));
      const [slow, fast] = [cool!, warm!].map((world) => courseIn(world));
      for (let day = 0; day < 60; day++) expect(fast!.clock[day]).toBeGreaterThanOrEqual(slow!.clock[day]!);
      expect(halfGrownDay(warm!)).toBeLessThanOrEqual(halfGrownDay(cool!));
    }),
    runs,
  );
});

interface Case {
  pestId: PestId;
  each: Weather;
  /** Which of those that hunt the pest. */
  pick: number;
  number: number;
  more: number;
  startingPerM2: number;
  crowdingPerM2: number;
}

const huntedPests = pestIds.filter((pestId) => huntersOf(pestId).length > 0);

const cases: fc.Arbitrary<Case> = fc.record({
  pestId: fc.constantFrom(...huntedPests),
  each: weather(eventDay + 8),
  pick: fc.nat(),
  number: fc.double({ min: 1, max: 500, noNaN: true }),
  more: fc.double({ min: 1.1, max: 10, noNaN: true }),
  startingPerM2: fc.double({ min: 0.01, max: 50, noNaN: true }),
  crowdingPerM2: fc.double({ min: 100, max: 5000, noNaN: true }),
});

/** One of the natural enemies of the pest and a release of `number` of it on the given day. */
function releaseOf({ pestId, pick }: Case, number: number, day: number): { index: number; release: Release } {
  const hunters = huntersOf(pestId);
  const index = pick % hunters.length;
  const enemy = hunters[index]!.id as EnemyId;
  const { form } = enemyTraits(speciesById(enemy)).release!;
  const time = new Date(day * dayMs).toISOString();
  return { index, release: { id: 'r', enemy, form, number, time, aliveShare: 1 } };
}

const run = (world: World, { startingPerM2, crowdingPerM2 }: Case) =>
  courseIn(world, middleMember(world, { startingPerM2, crowdingPerM2 }));

/** Not above, but for rounding. */
const notAbove = (one: number, other: number) => expect(one).toBeLessThanOrEqual(other * (1 + 1e-9) + 1e-12);

it('more enemies are never more prey in the next week', () => {
  fc.assert(
    fc.property(cases, (case_) => {
      const bare = worldOn(case_.pestId, pathOf(case_.each));
      const [few, many] = [case_.number, case_.number * case_.more].map((number) => {
        const { release } = releaseOf(case_, number, eventDay);
        return run(withInterventions(bare, [release], []), case_);
      });
      for (let day = eventDay; day < eventDay + 7; day++) {
        notAbove(many!.adults[day]! + many!.young[day]!, few!.adults[day]! + few!.young[day]!);
      }
    }),
    runs,
  );
});

it('a spray and what stays of it never help the enemy in the next week', () => {
  const kinds = fc.constantFrom(...(Object.keys(treatmentEffects) as TreatmentKind[]));
  fc.assert(
    fc.property(cases, kinds, fc.double({ min: 0.05, max: 1, noNaN: true }), (case_, kind, coveredShare) => {
      const bare = worldOn(case_.pestId, pathOf(case_.each));
      const { index, release } = releaseOf(case_, case_.number, 10);
      const treatment: Treatment = {
        id: 't',
        kind,
        time: new Date(eventDay * dayMs).toISOString(),
        coveredShare,
      };
      const [left, sprayed] = [[], [treatment]].map(
        (treatments) => run(withInterventions(bare, [release], treatments), case_).enemies[index]!,
      );
      for (let day = eventDay; day < eventDay + 7; day++) {
        notAbove(sprayed!.hunters[day]!, left!.hunters[day]!);
        notAbove(sprayed!.hidden[day]! + sprayed!.visible[day]!, left!.hidden[day]! + left!.visible[day]!);
      }
    }),
    runs,
  );
});

it('ants never help the enemy in the next week', () => {
  fc.assert(
    fc.property(cases, (case_) => {
      const path = pathOf(case_.each);
      const { index, release } = releaseOf(case_, case_.number, eventDay);
      const [without, withAnts] = [0, 1].map((seen) => {
        const ants = new Uint8Array(case_.each.means.length).fill(seen);
        const world = createWorld([case_.pestId], {
          startMs: 0,
          areaM2: 10,
          path,
          releases: [release],
          treatments: [],
          ants,
        });
        return run(world, case_);
      });
      for (let day = eventDay; day < eventDay + 7; day++) {
        const [alone, attended] = [without!.enemies[index]!, withAnts!.enemies[index]!];
        notAbove(attended.hunters[day]!, alone.hunters[day]!);
        notAbove(attended.hidden[day]! + attended.visible[day]!, alone.hidden[day]! + alone.visible[day]!);
        notAbove(
          without!.adults[day]! + without!.young[day]!,
          withAnts!.adults[day]! + withAnts!.young[day]!,
        );
      }
    }),
    runs,
  );
});
