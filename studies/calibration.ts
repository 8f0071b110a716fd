/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari & Gelman 2018, arXiv:1804.06788): a season is drawn
 * from the prior, counted, and fitted; the place of the truth among the members is uniform when the inference is right.
 * The same model stands on both sides: this tests the inference, not the biology.
 */
import { sampleEnsemble } from '../services/model/inference/ensemble.ts';
import { type Problem, trajectoryOf } from '../services/model/inference/member.ts';
import { layoutOf, memberParameters, shownParameters } from '../services/model/inference/prior.ts';
import {
  binomial,
  gamma,
  poisson,
  type Random,
  seeded,
  standardNormal,
} from '../services/model/numerics/random.ts';
import type { LeafLook, TrapWindow } from '../services/model/observation/counts.ts';
import { meanOfLeaf, meanOfTrap, view } from '../services/model/observation/view.ts';
import type { PestCourse } from '../services/model/population/trajectory.ts';
import { createWorld, type World } from '../services/model/population/world.ts';
import { randomisedPlace } from '../services/model/scoring/coverage.ts';

const countWeeks = 8;
const now = 7 * countWeeks;
const days = now + 15;
/** A warm house: 17 to 26 degC over the day, the same every day. */
const path = {
  hourlyC: Float64Array.from(
    { length: days * 24 },
    (_, hour) => 21.5 - 4.5 * Math.cos((2 * Math.PI * (hour - 3)) / 24),
  ),
  daylight: Uint8Array.from({ length: days * 24 }, (_, hour) => (hour % 24 >= 6 && hour % 24 < 20 ? 1 : 0)),
};

/** What is looked at: parts of the vector, and what the population comes to. */
const quantities = {
  'adults now': ({ course }: Drawn) => course.adults[now]!,
  'adults two weeks ahead': ({ course }: Drawn) => course.adults[now + 14]!,
  'young now': ({ course }: Drawn) => course.young[now]!,
  'catch of an adult': ({ problem, z }: Drawn) => shownParameters(z, problem.layout).qM2PerDay,
  'wrong insects a day': ({ problem, z }: Drawn) => shownParameters(z, problem.layout).backgroundPerDay,
  'eggs a day': ({ pest }: Drawn) => pest.eggsPerDay,
  'speed of development': ({ pest }: Drawn) => pest.speed,
  'canopy against sensor': ({ offsetC }: Drawn) => offsetC,
  'search of the enemy': ({ enemySearch }: Drawn) => enemySearch,
} satisfies Record<string, (drawn: Drawn) => number>;
export type Quantity = keyof typeof quantities;
export const quantityNames = Object.keys(quantities) as Quantity[];

interface Drawn {
  problem: Problem;
  z: Float64Array;
  course: PestCourse;
  pest: ReturnType<typeof memberParameters>['pests'][number];
  offsetC: number;
  enemySearch: number;
}

function drawn(problem: Problem, z: Float64Array): Drawn {
  const { layout, world } = problem;
  const member = memberParameters(z, layout, world, {
    hostFactor: 1,
    anomalyFromDay: days,
    anomalyC: new Float64Array(0),
  });
  const released = world.enemies.findIndex(({ at }) => at);
  return {
    problem,
    z,
    course: trajectoryOf(problem, z, 0, days),
    pest: member.pests[0]!,
    offsetC: member.offsetC[0]!,
    enemySearch: member.enemies[released]!.searchM2PerDay,
  };
}

/** The places of the truth of one drawn season among its members, by quantity. */
export function placesOf(seed: number, members: number): Record<Quantity, number> {
  const random = seeded(seed);
  const problem = countedSeason(random);
  const { vectors, weights } = sampleEnsemble(problem.counted, { members, seed: seed + 5_000 });
  const truth = drawn(problem.counted, problem.truth);
  const found = vectors.map((z) => drawn(problem.counted, z));
  const ties = seeded(seed + 9_000);
  return Object.fromEntries(
    quantityNames.map((name) => [
      name,
      randomisedPlace(found.map(quantities[name]), quantities[name](truth), ties, weights),
    ]),
  ) as Record<Quantity, number>;
}

/** Whitefly with Encarsia put in after four weeks, two traps counted weekly, ten leaves looked under every fortnight. */
function countedSeason(random: Random): { counted: Problem; truth: Float64Array } {
  const world: World = createWorld(['trialeurodes-vaporariorum'], {
    startMs: 0,
    areaM2: 10,
    path,
    releases: [
      {
        id: 'r',
        enemy: 'encarsia-formosa',
        form: 'pupa on card',
        number: 60,
        time: new Date(28.5 * 86_400_000).toISOString(),
        aliveShare: 1,
      },
    ],
    treatments: [],
    cards: new Float64Array(days).fill(2),
  });
  const layout = layoutOf(world, 2);
  const truth = Float64Array.from({ length: layout.length }, () => standardNormal(random));
  const traps: TrapWindow[] = Array.from({ length: 2 * countWeeks }, (_, i) => {
    const toDay = 7 * (Math.floor(i / 2) + 1);
    return { timeMs: 0, trap: i % 2, fromDay: toDay - 7, toDay, countedFraction: 1, low: 0, high: 0 };
  });
  const leaves: LeafLook[] = [14, 28, 42, 56].map((day) => ({ timeMs: 0, day, leaves: 10 }));
  const empty: Problem = {
    world,
    layout,
    shown: { traps, trapIds: ['a', 'b'], leaves },
    hostFactor: 1,
    anomalyFromDay: days,
    anomalyC: [],
    wanted: Uint8Array.from({ length: days }, (_, day) => (day % 7 === 0 ? 1 : 0)),
  };
  const p = shownParameters(truth, layout);
  const seen = view(world, trajectoryOf(empty, truth, 0, days), empty.shown);
  const caught = traps.map((window, i) => {
    const mean = meanOfTrap(window, seen.flyingDays[i]!, p);
    const count = poisson(random, mean * gamma(random, { shape: p.k, scale: 1 / p.k }));
    return { ...window, low: count, high: count };
  });
  const looked = leaves.map((look, i) => {
    const [young, visible] = [seen.youngPerM2[i]!, seen.visiblePerM2[i]!];
    const perLeaf = meanOfLeaf(young + visible, p);
    const total = poisson(
      random,
      perLeaf * look.leaves * gamma(random, { shape: p.leafK, scale: 1 / p.leafK }),
    );
    const share = betaShare(0.01 + 0.98 * (visible > 0 ? visible / (young + visible) : 0), random);
    const black = binomial(random, { trials: total, probability: share });
    return {
      ...look,
      young: { low: total - black, high: total - black },
      visible: { low: black, high: black },
    };
  });
  return { counted: { ...empty, shown: { ...empty.shown, traps: caught, leaves: looked } }, truth };
}

/** A beta share of this mean and precision 8, as the likelihood takes it. */
function betaShare(mean: number, random: Random): number {
  const one = gamma(random, { shape: 8 * mean, scale: 1 });
  const other = gamma(random, { shape: 8 * (1 - mean), scale: 1 });
  return one / (one + other);
}
