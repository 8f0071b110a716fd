/**
 * How a house answers to the air outdoors, learned from its own days: heat gained by day, given back by night, let
 * out by the vents. Everything is a departure from the habit of the last days, so that with little to learn from
 * the days ahead are the mean of those behind. docs/forecast.md, "Outlook".
 */
import { ridge } from '../numerics/leastSquares.ts';
import { dayMs } from '../units.ts';
import { dayOfYear } from './dayLength.ts';
import type { DaySummary, HouseDay } from './houseDays.ts';
import { mean } from './knots.ts';
import type { OutdoorDays } from './outdoorDays.ts';
import type { OutlookLaw } from './outlookLaw.ts';
import { seasonalMean } from './seasonalMean.ts';
import { sunOfDay } from './solarRadiation.ts';

const parts = ['meanC', 'hotC', 'coldC'] as const;
type Part = (typeof parts)[number];

export interface HouseResponse {
  /** °C of the house's daily mean for one of the air outdoors. */
  outdoorSlope: number;
  /** Expected of the day that begins `offset` days after the instant it was learned at, in its three parts. */
  expected(offset: number): DaySummary;
  /** The same as it would have been said `ago` days earlier, from the days known then; undefined without any. */
  expectedThen(ago: number, offset: number): DaySummary | undefined;
}

export interface Learning {
  days: readonly HouseDay[];
  outdoors: OutdoorDays | undefined;
  latitudeDeg: number;
  fromMs: number;
  law: OutlookLaw;
}

/** Learns the response from the days of a house; at least one is needed. */
export function learnResponse(learning: Learning): HouseResponse {
  const { outdoors, law } = learning;
  const featuresOf = features(learning);
  const slopes = Object.fromEntries(parts.map((part) => [part, slopesOf(part, learning, featuresOf)]));
  const spell = outdoors ? law.house : law.weather;
  const looks = new Map<number, Look | undefined>();
  const lookFrom = (ago: number): Look | undefined => {
    if (!looks.has(ago)) looks.set(ago, look(learning, featuresOf, ago));
    return looks.get(ago);
  };
  const answer = ({ habitC, usual }: Look, part: Part, offset: number): number =>
    habitC[part] + dot(slopes[part]!, featuresOf(offset)) - dot(slopes[part]!, usual);
  const departure = (from: Look, part: Part) => from.last[part] - answer(from, part, -from.last.age);
  const expectedFrom = (ago: number, offset: number): DaySummary | undefined => {
    const from = lookFrom(ago);
    if (!from) return undefined;
    // Days from the last one seen to that one.
    const goneDays = offset - ago + from.last.age;
    const carried = spell.share * Math.exp(-(goneDays - 1) / spell.lastsDays);
    const of = (part: Part) => answer(from, part, offset - ago) + carried * departure(from, part);
    return { meanC: of('meanC'), hotC: of('hotC'), coldC: of('coldC') };
  };
  return {
    outdoorSlope: slopes.meanC![0]!,
    expected: (offset) => expectedFrom(0, offset)!,
    expectedThen: expectedFrom,
  };
}

/** What was known of a house some days ago: its habit, the usual air outdoors with it, its last day. */
interface Look {
  last: HouseDay;
  habitC: DaySummary;
  usual: readonly number[];
}

function look({ days, law }: Learning, featuresOf: Features, ago: number): Look | undefined {
  const last = days.find(({ age }) => age > ago);
  const habit = habitOf(days, ago, law.habitDays);
  if (!last || !habit) return undefined;
  const of = (part: Part) => mean(habit.map((day) => day[part]))!;
  return {
    last,
    habitC: { meanC: of('meanC'), hotC: of('hotC'), coldC: of('coldC') },
    usual: meanFeatures(habit, featuresOf),
  };
}

type Features = (offset: number) => readonly number[];

/** Outdoor mean and range, warmth above which vents open, and the sun above the air, of a day. */
function features({ outdoors, latitudeDeg, fromMs, law }: Learning): Features {
  const usual = seasonalMean(latitudeDeg);
  const seen = new Map<number, readonly number[]>();
  return (offset) => {
    const there = seen.get(offset);
    if (there) return there;
    const middleMs = fromMs + (offset + 0.5) * dayMs;
    const out = outdoors?.(offset) ?? { meanC: usual(middleMs), rangeC: 0 };
    const vents = outdoors ? Math.max(0, out.meanC + out.rangeC / 2 - law.ventsAboveC) : 0;
    const sun = outdoors
      ? sunOfDay({ latitudeDeg, dayOfYear: dayOfYear(middleMs) }).extraterrestrialMJPerM2 / 10
      : 0;
    const row = [out.meanC, out.rangeC, vents, sun];
    seen.set(offset, row);
    return row;
  };
}

/** The slopes of one part: of each day's departure from the days before it, on that of the air outdoors. */
function slopesOf(part: Part, { days, outdoors, law }: Learning, featuresOf: Features): number[] {
  if (!outdoors) return [law.seasonSlope, 0, 0, 0];
  const prior = law.priorSlopes[part];
  const rows = days.filter(({ age }) => outdoors(-age).known);
  const problem = { features: [] as number[][], observed: [] as number[], weights: [] as number[] };
  for (const day of rows) {
    const before = habitOf(rows, day.age, law.habitDays);
    if (!before || before.length < 3) continue;
    const usual = meanFeatures(before, featuresOf);
    problem.features.push(featuresOf(-day.age).map((x, i) => x - usual[i]!));
    problem.observed.push(day[part] - mean(before.map((one) => one[part]))!);
    problem.weights.push(Math.exp(-day.age / law.memoryDays));
  }
  return ridge({
    ...problem,
    priorSlopes: prior,
    priorPrecisions: law.slopeSd.map((sd) => (law.responseSpread.sdC / sd) ** 2),
  });
}

/** The days of the habit as known `ago` days before; after a long gap the last ones there are. */
function habitOf(days: readonly HouseDay[], ago: number, habitDays: number): readonly HouseDay[] | undefined {
  const first = days.findIndex(({ age }) => age > ago);
  if (first < 0) return undefined;
  const known = days.slice(first, first + habitDays);
  const recent = known.filter(({ age }) => age <= ago + habitDays);
  return recent.length > 0 ? recent : known;
}

function meanFeatures(days: readonly HouseDay[], featuresOf: Features): number[] {
  const rows = days.map(({ age }) => featuresOf(-age));
  return rows[0]!.map((_, i) => mean(rows.map((row) => row[i]!))!);
}

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
