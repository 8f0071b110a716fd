/**
 * What stands in for readings that are missing: another sensor, the day's extremes typed in, or the daily
 * course of the days around. Every stand-in is marked with where it came from.
 */
import type { Place } from '../season.ts';
import { dayMs, hourMs, minuteMs } from '../units.ts';
import { sunTimes } from './dayLength.ts';
import { halfCosine } from './diurnal.ts';

export type FilledBy = 'other-sensor' | 'daily-extremes' | 'diurnal-curve';

export interface Knot {
  timeMs: number;
  temperatureC: number;
  /** Absent for a believed reading of the leading sensor. */
  by?: FilledBy;
}

export interface ExtremesDay {
  startMs: number;
  endMs: number;
  minC: number;
  maxC: number;
}

interface Span {
  fromMs: number;
  untilMs: number;
}

interface Gap {
  fromMs: number;
  toMs: number;
  before?: Knot | undefined;
  after?: Knot | undefined;
}

/** Readings up to this far apart are joined by a straight line. */
export const longestLineMs = 2 * hourMs;
const gridMs = 30 * minuteMs;
/** How far around a gap its neighbours' habits are learned. */
const aroundMs = 7 * dayMs;
/** What sets the edge of a gap apart from its neighbours' habits is weather, and lasts about a day. */
const weatherMs = dayMs;

/** Fills gaps with another sensor's readings, shifted by the mean difference of the week before (or after). */
export function fillFromSensor(knots: readonly Knot[], other: readonly Knot[], span: Span): Knot[] {
  return filledWith(knots, span, (gap) => {
    const shiftC = meanDifference(knots, other, gap);
    return between(other, gap.fromMs, gap.toMs).map(({ timeMs, temperatureC }) => ({
      timeMs,
      temperatureC: temperatureC + shiftC,
      by: 'other-sensor',
    }));
  });
}

/** Fills gaps on days whose lowest and highest temperature were typed in. */
export function fillFromExtremes(
  knots: readonly Knot[],
  days: readonly ExtremesDay[],
  place: Place,
  span: Span,
): Knot[] {
  if (days.length === 0) return [...knots];
  const courses = days.map((day, i) => courseOfDay(day, days[i - 1], days[i + 1], place));
  return filledWith(knots, span, (gap) =>
    courses
      .filter(({ day }) => day.startMs < gap.toMs && day.endMs > gap.fromMs)
      .flatMap(({ day, at }) =>
        grid(Math.max(gap.fromMs, day.startMs), Math.min(gap.toMs, day.endMs)).map((timeMs) => ({
          timeMs,
          temperatureC: at(timeMs),
          by: 'daily-extremes' as const,
        })),
      ),
  );
}

/** Fills what is left with the mean daily course of the days around, joined to the readings at both edges. */
export function fillFromDays(knots: readonly Knot[], span: Span): Knot[] {
  return filledWith(knots, span, (gap) => {
    const at = courseAcross(knots, gap);
    return grid(gap.fromMs, gap.toMs).map((timeMs) => ({
      timeMs,
      temperatureC: at(timeMs),
      by: 'diurnal-curve',
    }));
  });
}

/** Carries the curve over the last minutes after the last knot, too short to be called a gap. */
export function closeTail(knots: readonly Knot[], { untilMs }: Span): Knot[] {
  const last = knots.at(-1)!;
  if (last.timeMs >= untilMs) return [...knots];
  const at = courseAcross(knots, { fromMs: last.timeMs, toMs: untilMs, before: last });
  return [...knots, { ...last, timeMs: untilMs, temperatureC: at(untilMs) }];
}

/** The knots with those of `fill` for each gap; all gaps are filled from the same knots, so none feeds another. */
function filledWith(knots: readonly Knot[], span: Span, fill: (gap: Gap) => Knot[]): Knot[] {
  const known = new Set(knots.map((knot) => knot.timeMs));
  const added = gapsIn(knots, span)
    .flatMap(fill)
    .filter((knot) => !known.has(knot.timeMs) && known.add(knot.timeMs));
  return [...knots, ...added].sort((a, b) => a.timeMs - b.timeMs);
}

function gapsIn(knots: readonly Knot[], { fromMs, untilMs }: Span): Gap[] {
  const edges = [undefined, ...knots, undefined];
  return edges
    .slice(1)
    .map((after, i) => {
      const before = edges[i];
      return { fromMs: before?.timeMs ?? fromMs, toMs: after?.timeMs ?? untilMs, before, after };
    })
    .filter((gap) => gap.toMs - gap.fromMs > longestLineMs);
}

/** Times from one instant to another, both included, at most the grid's step apart. */
function grid(fromMs: number, toMs: number): number[] {
  const steps = Math.max(1, Math.ceil((toMs - fromMs) / gridMs));
  return Array.from({ length: steps + 1 }, (_, i) => Math.round(fromMs + (i * (toMs - fromMs)) / steps));
}

function between(knots: readonly Knot[], fromMs: number, toMs: number): Knot[] {
  return knots.slice(firstFrom(knots, fromMs), firstFrom(knots, toMs + 1));
}

/** Index of the first knot at or after an instant. */
function firstFrom(knots: readonly Knot[], timeMs: number): number {
  let low = 0;
  let high = knots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (knots[middle]!.timeMs < timeMs) low = middle + 1;
    else high = middle;
  }
  return low;
}

function meanDifference(knots: readonly Knot[], other: readonly Knot[], gap: Gap): number {
  const differences = (fromMs: number, toMs: number) =>
    between(other, fromMs, toMs).flatMap(({ timeMs, temperatureC }) => {
      const ours = lineAt(knots, timeMs);
      return ours === undefined ? [] : [ours - temperatureC];
    });
  const before = differences(gap.fromMs - aroundMs, gap.fromMs);
  return mean(before.length > 0 ? before : differences(gap.toMs, gap.toMs + aroundMs)) ?? 0;
}

/** The line between two knots near enough, if there is one at this instant. */
function lineAt(knots: readonly Knot[], timeMs: number): number | undefined {
  const i = firstFrom(knots, timeMs);
  const [before, after] = [knots[i - 1], knots[i]];
  if (after?.timeMs === timeMs) return after.temperatureC;
  if (!before || !after || after.timeMs - before.timeMs > longestLineMs) return undefined;
  const share = (timeMs - before.timeMs) / (after.timeMs - before.timeMs);
  return before.temperatureC + share * (after.temperatureC - before.temperatureC);
}

/** Half cosines from the highest of the day before through this day's lowest and highest to the next lowest. */
function courseOfDay(
  day: ExtremesDay,
  before: ExtremesDay | undefined,
  after: ExtremesDay | undefined,
  place: Place,
): { day: ExtremesDay; at: (timeMs: number) => number } {
  const middleMs = (day.startMs + day.endMs) / 2;
  const { sunriseMs, noonMs } = sunTimes(middleMs, place);
  const peakMs = noonMs + 2 * hourMs;
  // Near the poles the sun may not rise at all; the lowest then stands a quarter day before noon.
  const lowMs = sunriseMs < noonMs - 11 * hourMs || sunriseMs >= noonMs ? noonMs - 6 * hourMs : sunriseMs;
  const eveningBefore = before && before.endMs === day.startMs ? before.maxC : day.maxC;
  const morningAfter = after && after.startMs === day.endMs ? after.minC : day.minC;
  const anchors: Knot[] = [
    { timeMs: peakMs - dayMs, temperatureC: eveningBefore },
    { timeMs: lowMs, temperatureC: day.minC },
    { timeMs: peakMs, temperatureC: day.maxC },
    { timeMs: lowMs + dayMs, temperatureC: morningAfter },
    { timeMs: peakMs + dayMs, temperatureC: day.maxC },
  ];
  return { day, at: (timeMs) => halfCosine(anchors, timeMs) };
}

/** Mean daily course plus what is left over at each edge, fading away from it. */
function courseAcross(knots: readonly Knot[], gap: Gap): (timeMs: number) => number {
  const course = dailyCourse([
    ...between(knots, gap.fromMs - aroundMs, gap.fromMs),
    ...between(knots, gap.toMs, gap.toMs + aroundMs),
  ]);
  const leftover = (edge: Knot | undefined) => (edge ? edge.temperatureC - course(edge.timeMs) : 0);
  const [first, last] = [leftover(gap.before), leftover(gap.after)];
  return (timeMs) => {
    const share =
      gap.before && gap.after ? (timeMs - gap.fromMs) / (gap.toMs - gap.fromMs) : gap.after ? 1 : 0;
    const fromFirst = first * (1 - share) * Math.exp(-(timeMs - gap.fromMs) / weatherMs);
    const fromLast = last * share * Math.exp(-(gap.toMs - timeMs) / weatherMs);
    return course(timeMs) + fromFirst + fromLast;
  };
}

/** Mean temperature by time of day, linear between the middles of hours; hours without knots are bridged. */
export function dailyCourse(knots: readonly Knot[]): (timeMs: number) => number {
  const hours = Array.from({ length: 24 }, () => [] as number[]);
  for (const { timeMs, temperatureC } of knots)
    hours[Math.floor((timeMs % dayMs) / hourMs)]!.push(temperatureC);
  const anchors = hours.flatMap((values, hour) => {
    const temperatureC = mean(values);
    return temperatureC === undefined ? [] : [{ timeMs: (hour + 0.5) * hourMs, temperatureC }];
  });
  const around = [-dayMs, 0, dayMs].flatMap((shift) =>
    anchors.map((anchor) => ({ ...anchor, timeMs: anchor.timeMs + shift })),
  );
  return (timeMs) => {
    const i = firstFrom(around, timeMs % dayMs);
    const [before, after] = [around[i - 1]!, around[i]!];
    const share = ((timeMs % dayMs) - before.timeMs) / (after.timeMs - before.timeMs);
    return before.temperatureC + share * (after.temperatureC - before.temperatureC);
  };
}

function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}
