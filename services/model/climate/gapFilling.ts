/**
 * What stands in for readings that are missing: another sensor, the day's extremes typed in, or the daily
 * course of the days around. Every stand-in is marked with where it came from.
 */
import type { Place } from '../season.ts';
import { minuteMs } from '../units.ts';
import { aroundMs, courseAcross, courseOfExtremes, type ExtremesDay, type Gap } from './dailyCourse.ts';
import { between, type Knot, lineAt, longestLineMs, mean } from './knots.ts';

/** What the curve has to cover. */
export interface Span {
  fromMs: number;
  untilMs: number;
}

const gridMs = 30 * minuteMs;

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
  const courses = days.map((day, i) => ({
    day,
    course: courseOfExtremes(day, { before: days[i - 1], after: days[i + 1] }, place),
  }));
  return filledWith(knots, span, (gap) =>
    courses
      .filter(({ day }) => day.startMs < gap.toMs && day.endMs > gap.fromMs)
      .flatMap(({ day, course }) =>
        grid(Math.max(gap.fromMs, day.startMs), Math.min(gap.toMs, day.endMs)).map((timeMs) => ({
          timeMs,
          temperatureC: course(timeMs),
          by: 'daily-extremes' as const,
        })),
      ),
  );
}

/** Fills what is left with the mean daily course of the days around, joined to the readings at both edges. */
export function fillFromDays(knots: readonly Knot[], span: Span): Knot[] {
  return filledWith(knots, span, (gap) => {
    const course = courseAcross(knots, gap);
    return grid(gap.fromMs, gap.toMs).map((timeMs) => ({
      timeMs,
      temperatureC: course(timeMs),
      by: 'diurnal-curve',
    }));
  });
}

/** Carries the curve over the last minutes after the last knot, too short to be called a gap. */
export function closeTail(knots: readonly Knot[], { untilMs }: Span): readonly Knot[] {
  const last = knots.at(-1)!;
  if (last.timeMs >= untilMs) return knots;
  const course = courseAcross(knots, { fromMs: last.timeMs, toMs: untilMs, before: last });
  return [...knots, { ...last, timeMs: untilMs, temperatureC: course(untilMs) }];
}

/** The knots with those of `fill` for each gap; all gaps are filled from the same knots, so none feeds another. */
function filledWith(knots: readonly Knot[], span: Span, fill: (gap: Gap) => Knot[]): Knot[] {
  const found = gapsIn(knots, span).flatMap(fill);
  const known = new Set(knots.map((knot) => knot.timeMs));
  const added = found.filter((knot) => !known.has(knot.timeMs) && known.add(knot.timeMs));
  return [...knots, ...added].sort((a, b) => a.timeMs - b.timeMs);
}

function gapsIn(knots: readonly Knot[], { fromMs, untilMs }: Span): Gap[] {
  const gaps: Gap[] = [];
  for (let i = 0; i <= knots.length; i += 1) {
    const before = knots[i - 1];
    const after = knots[i];
    const gap = { fromMs: before?.timeMs ?? fromMs, toMs: after?.timeMs ?? untilMs, before, after };
    if (gap.toMs - gap.fromMs > longestLineMs) gaps.push(gap);
  }
  return gaps;
}

/** Times from one instant to another, both included, at most the grid's step apart. */
function grid(fromMs: number, toMs: number): number[] {
  const steps = Math.max(1, Math.ceil((toMs - fromMs) / gridMs));
  return Array.from({ length: steps + 1 }, (_, i) => Math.round(fromMs + (i * (toMs - fromMs)) / steps));
}

function meanDifference(knots: readonly Knot[], other: readonly Knot[], gap: Gap): number {
  const differences = (fromMs: number, toMs: number) =>
    between(other, fromMs, toMs).flatMap(({ timeMs, temperatureC }) => {
      const ours = lineAt(knots, timeMs);
      return ours === undefined ? [] : [ours - temperatureC];
    });
  return (
    mean(differences(gap.fromMs - aroundMs, gap.fromMs)) ??
    mean(differences(gap.toMs, gap.toMs + aroundMs)) ??
    0
  );
}
