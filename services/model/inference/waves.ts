/** When the young of today, and their young in turn, become adults. */
import type { PestForecast } from '../outcome.ts';
import type { PestCourse } from '../population/trajectory.ts';
import type { World } from '../population/world.ts';
import { dateRange } from './dates.ts';
import { type Problem, parametersOf } from './member.ts';

/** Fewer young in the house make no wave. */
const fewestYoung = 1;
/** Rather early in life, since most eggs are laid by the young: mean age of mothers, in lives. */
const layingAge = 0.33;

/** Middle of the emergence of each generation, by member; those beyond the look ahead are left out. */
export function waves(
  seen: {
    world: World;
    trajectories: readonly PestCourse[];
    weights: Float64Array;
    startMs: number;
    today: number;
  },
  problem: Problem,
  vectors: readonly Float64Array[],
): PestForecast['waves'] {
  const { world, trajectories, weights, startMs, today } = seen;
  const at = Math.floor(today);
  const first = trajectories.map((trajectory) => middleAge(world, trajectory, at));
  const generation = (number: number): PestForecast['waves'] => {
    const dated = trajectories.flatMap((trajectory, slot) => {
      const age = first[slot];
      if (age === undefined) return [];
      const life = world.pests[0]!.life * parametersOf(problem, vectors[slot]!, slot).pests[0]!.lifeFactor;
      const between = world.pests[0]!.table.stages.at(-1)!.exit + layingAge * life;
      const target = trajectory.clock[at]! + (1 - age) + (number - 1) * between;
      const day = trajectory.clock.findIndex((clock) => clock >= target);
      // Reached within that day: its middle.
      return day < 0 ? [] : [{ day: Math.max(day + 0.5, today), weight: weights[slot]! }];
    });
    const share = dated.reduce<number>((sum, { weight }) => sum + weight, 0);
    const having = first.reduce<number>(
      (sum, age, slot) => sum + (age === undefined ? 0 : weights[slot]!),
      0,
    );
    // Too few members reach it within the look ahead: a range of those alone would come out too early.
    if (having === 0 || share < 0.5 * having) return [];
    const days = dated.map(({ day }) => day);
    return [
      {
        generation: number,
        adults: dateRange(
          startMs,
          days,
          dated.map(({ weight }) => weight),
        ),
      },
    ];
  };
  return [1, 2, 3].flatMap(generation);
}

/** Mean age of the young on a day, or undefined when there are next to none. */
function middleAge(world: World, { young, youngAge }: PestCourse, day: number): number | undefined {
  return young[day]! * world.areaM2 < fewestYoung ? undefined : youngAge[day]!;
}
