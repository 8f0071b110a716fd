/**
 * One season of the virtual garden, forecast after every round of counts from the fourth on, and held against what
 * came: the counts of four weeks, densities, the first wave, and whether money was asked for.
 */
import {
  adviseFrom,
  crpsOfSample,
  type Fit,
  type PestId,
  randomisedPlace,
  replay,
  type ScoredCount,
} from '../services/model/index.ts';
import { type PestKind, pestKinds } from '../simulators/biology.ts';
import { stream } from '../simulators/random.ts';
import { species } from '../simulators/species.ts';
import { startGarden, type VirtualGarden } from '../simulators/startGarden.ts';
import { trialByName } from '../simulators/trials.ts';
import { emergenceOfYoung } from '../simulators/truth.ts';
import { limitSample } from './limit.ts';

export interface Task {
  trial: string;
  seed: number;
  members: number;
  /** Score the season up to this week only. */
  weeks?: number;
}

export interface CountScore
  extends Pick<ScoredCount, 'pest' | 'lead' | 'observed' | 'crps' | 'place' | 'last' | 'trend'> {
  /** CRPS of who knows the insects and the cards, but not their luck. */
  limit: number;
}

export interface DensityScore {
  pest: PestId;
  lead: number;
  what: 'adults' | 'young';
  /** On log(1 + insects per m2). */
  crps: number;
  place: number;
}

export interface WaveScore {
  pest: PestId;
  /** Days until the middle of the wave really came, and how much later it had been forecast. */
  daysAhead: number;
  errorDays: number;
}

export interface SeasonScore {
  task: Task;
  counts: CountScore[];
  densities: DensityScore[];
  waves: WaveScore[];
  /** Decisions of the weeks in which there was no pest in the house, and none to come. */
  quietWeeks: { weeks: number; spending: number };
  seconds: number;
}

const dayMs = 86_400_000;

export function scoreSeason(task: Task, clock: () => number): SeasonScore {
  const from = clock();
  const garden = startGarden(trialByName(task.trial), task.seed);
  while (garden.week() < Math.min(garden.weeks, task.weeks ?? garden.weeks)) garden.advanceWeek();
  const scored: SeasonScore = {
    task,
    counts: [],
    densities: [],
    waves: [],
    quietWeeks: { weeks: 0, spending: 0 },
    seconds: 0,
  };
  const isQuiet = Object.values(garden.truth.days).every(({ adults }) => adults.every((n) => n === 0));
  const counts = replay(garden.season(), { members: task.members }, (asOf, made) => {
    const asOfMs = Date.parse(asOf);
    scored.densities.push(...densities(garden, made, asOfMs));
    scored.waves.push(...waves(garden, made, asOfMs));
    if (!isQuiet) return;
    const { decision } = adviseFrom(garden.season(asOfMs), made, asOf);
    scored.quietWeeks.weeks += 1;
    if (decision === 'order' || decision === 'top-up') scored.quietWeeks.spending += 1;
  });
  scored.counts = counts.map((count) => withLimit(garden, count));
  return { ...scored, seconds: Math.round((clock() - from) / 100) / 10 };
}

function withLimit({ truth }: VirtualGarden, count: ScoredCount): CountScore {
  const { pest, lead, observed, crps, place, last, trend, time } = count;
  const sample = limitSample(truth, pest, Date.parse(time)).map(Math.log1p);
  const limit = crpsOfSample(sample, Math.log1p(observed));
  return { pest, lead, observed, crps: round(crps), limit: round(limit), place: round(place), last, trend };
}

const round = (value: number) => Math.round(1e5 * value) / 1e5;

const kindOf = (pest: PestId): PestKind => {
  const kind = pestKinds.find((one) => species[one].pest === pest);
  if (!kind) throw new RangeError(`the virtual garden has no ${pest}`);
  return kind;
};

function densities({ truth }: VirtualGarden, made: Fit, asOfMs: number): DensityScore[] {
  const random = stream(asOfMs / dayMs, 'places');
  return made.forecast.pests.flatMap(({ pest }) =>
    made.ahead(pest).flatMap((week, index) => {
      const days = Math.round((Date.parse(week.end) - truth.startMs) / dayMs);
      const lead = index + 1;
      if (lead > 4 || days > truth.days[kindOf(pest)].adults.length) return [];
      return (['adults', 'young'] as const).map((what) => {
        const real = truth.days[kindOf(pest)][what][days - 1]!;
        const { values, weights } = what === 'adults' ? week.adultsPerM2 : week.youngPerM2;
        const crps = crpsOfSample(Array.from(values, Math.log1p), Math.log1p(real), weights);
        return {
          pest,
          lead,
          what,
          crps: round(crps),
          place: round(randomisedPlace(values, real, random, weights)),
        };
      });
    }),
  );
}

/** A wave is judged where there are young enough to make one. */
const fewestYoungPerM2 = 2;

function waves({ garden, truth }: VirtualGarden, made: Fit, asOfMs: number): WaveScore[] {
  const days = Math.round((asOfMs - truth.startMs) / dayMs);
  return made.forecast.pests.flatMap(({ pest, waves }) => {
    const kind = kindOf(pest);
    const first = waves.find(({ generation }) => generation === 1);
    const came = emergenceOfYoung(garden.colonies[kind], truth.startMs, days);
    if (!first || came === undefined || truth.days[kind].young[days - 1]! < fewestYoungPerM2) return [];
    const errorDays = (Date.parse(first.adults.q50) - came) / dayMs;
    return [{ pest, daysAhead: round((came - asOfMs) / dayMs), errorDays: round(errorDays) }];
  });
}
