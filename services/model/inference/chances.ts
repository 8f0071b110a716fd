/** The random parts of the counts ahead, drawn once, and the insurance "as last time". */
import type { WeightedSample } from '../numerics/quantiles.ts';
import { gamma, type Random, standardNormal } from '../numerics/random.ts';
import type { CountedAs } from '../outcome.ts';
import type { World } from '../population/world.ts';
import { pestTraits, speciesById } from '../species/catalogue.ts';
import { binomialAt } from './binomialAt.ts';
import type { Ensemble } from './ensemble.ts';
import type { Problem } from './member.ts';
import { poissonAt } from './poissonAt.ts';
import { shownParameters } from './prior.ts';

/** Random parts of the next counts, drawn once for each member and week. */
export interface Chances {
  gammaAt: readonly Float64Array[];
  uniformAt: readonly Float64Array[];
  trap: Int32Array;
}

/** "As last time": mixed in as insurance; weight 0 when there is no recent count. */
export interface Persistence {
  weight: number;
  /** What the last count stands for, in the unit of the pest. */
  last: number;
  /** Standard normals and uniforms of its draws. */
  normals: Float64Array;
  uniforms: Float64Array;
}

/** Draws the random parts: a gamma factor (clumping) and a uniform number a member and week. */
export function drawChances(problem: Problem, ensemble: Ensemble, weeks: number, random: Random): Chances {
  const ks = ensemble.vectors.map((z) => shownParameters(z, problem.layout).k);
  return {
    gammaAt: ks.map((k) =>
      Float64Array.from({ length: weeks }, () => gamma(random, { shape: k, scale: 1 / k })),
    ),
    uniformAt: ks.map(() => Float64Array.from({ length: weeks }, () => random())),
    trap: Int32Array.from(ks, () => Math.floor(random() * problem.layout.traps)),
  };
}

/**
 * Weight of "as last time": a forecast that has not proved itself, or stands on friends set out, leans on it more; most
 * where leaves alone tell, since how a pest walks from plant to plant is not followed. Judgement.
 */
export function insuranceWeight({ pests, enemies }: World): number {
  const record = speciesById(pests[0]!.id);
  const friendsSetOut = enemies.some(({ released }) => released);
  if (pestTraits(record).seen.trap === undefined) return 0.5;
  return record.proved === undefined || friendsSetOut ? 0.3 : 0.1;
}

/** Draws of the persistence part. */
export function drawPersistence(weight: number, last: number, random: Random): Persistence {
  const draws = 200;
  return {
    weight,
    last,
    normals: Float64Array.from({ length: draws }, () => standardNormal(random)),
    uniforms: Float64Array.from({ length: draws }, () => random()),
  };
}

/** Linear pool of the members' counts with "as last time"; weeks past are the members' alone. */
export function mixed(
  counts: number[],
  weights: Float64Array,
  as: Persistence,
  week: { index: number; unit: CountedAs['unit'] },
): WeightedSample {
  const { index, unit } = week;
  if (as.weight === 0 || index <= 0) return { values: counts, weights };
  const draws = as.normals.length;
  const same = Array.from(as.normals, (normal, i) => {
    const growth = Math.exp(0.7 * Math.sqrt(index) * normal);
    return unit === 'trap-week'
      ? poissonAt((as.last + 0.3) * growth, as.uniforms[i]!)
      : binomialAt(10, shareGrown(as.last, growth), as.uniforms[i]!);
  });
  const shares = Array.from(weights, (weight) => weight * (1 - as.weight));
  return {
    values: [...counts, ...same],
    weights: [...shares, ...same.map(() => as.weight / draws)],
  };
}

/** Share of leaves with any when the odds of the last count have grown; 0 and 10 of ten are not taken at their word. */
function shareGrown(ofTen: number, growth: number): number {
  const odds = ((ofTen + 0.3) / (10.3 - ofTen)) * growth;
  return odds / (1 + odds);
}
