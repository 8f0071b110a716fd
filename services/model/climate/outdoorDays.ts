/** The air outdoors, day by day around an instant: as measured, as forecast, else as usual for place and season. */
import type { Season } from '../season.ts';
import { dayMs, hourMs } from '../units.ts';
import { summaryOf } from './houseDays.ts';
import { type Knot, lineAt, mean } from './knots.ts';
import type { OutlookLaw } from './outlookLaw.ts';
import { seasonalMean } from './seasonalMean.ts';

export interface OutdoorDay {
  meanC: number;
  /** Hottest less coldest three hours; stands for sunshine. */
  rangeC: number;
  /** Measured or forecast; otherwise climatology. */
  known: boolean;
}

/** The 24 hours that begin `offset` days after the instant; negative offsets are behind. */
export type OutdoorDays = (offset: number) => OutdoorDay;

/** Forecasts come in steps of up to six hours. */
const longestStepMs = 6 * hourMs;
/** Days around now that teach how this place differs from its latitude. */
const levelDays = 14;

/**
 * What is known outdoors at an instant, and how old the forecast is. Points issued or measured later are not read;
 * without a single whole day there are no outdoors.
 */
export function knownOutdoors(
  season: Season,
  fromMs: number,
  law: OutlookLaw,
): { outdoors: OutdoorDays | undefined; staleDays: number } {
  const issuedMs = lastIssuedMs(season.outdoor, fromMs) ?? fromMs;
  return { outdoors: outdoorDays(season, fromMs, law), staleDays: (fromMs - issuedMs) / dayMs };
}

/** When the newest forecast known at an instant was issued. */
export function lastIssuedMs(points: Season['outdoor'], asOfMs: number): number | undefined {
  const issued = points.flatMap(({ issuedAt }) => (issuedAt === undefined ? [] : [Date.parse(issuedAt)]));
  return issued.reduce<number | undefined>(
    (newest, ms) => (ms <= asOfMs && ms > (newest ?? Number.NEGATIVE_INFINITY) ? ms : newest),
    undefined,
  );
}

function outdoorDays(season: Season, fromMs: number, law: OutlookLaw): OutdoorDays | undefined {
  const knots = knownPoints(season.outdoor, fromMs);
  if (knots.length === 0) return undefined;
  const usual = seasonalMean(season.place.latitudeDeg);
  const usualOf = (offset: number) => usual(fromMs + (offset + 0.5) * dayMs);
  const seen = new Map<number, OutdoorDay | undefined>();
  const known = (offset: number): OutdoorDay | undefined => {
    if (!seen.has(offset)) seen.set(offset, knownDay(knots, fromMs + offset * dayMs));
    return seen.get(offset);
  };
  const past = daysKnown(known, -levelDays, -1);
  // A forecast that began today says how cold the place is, before there is any past.
  const around = past.length > 0 ? past : daysKnown(known, 0, levelDays).slice(0, 3);
  if (around.length === 0) return undefined;
  const differences = around.map(({ offset, day }) => day.meanC - usualOf(offset));
  const levelC = mean(differences)!;
  const usualRange = mean(around.map(({ day }) => day.rangeC))!;
  const last = daysKnown(known, -levelDays, law.forecastDays - 1).at(-1)!;
  const anomalyC = last.day.meanC - usualOf(last.offset) - levelC;
  return (offset) => {
    const there = known(offset);
    if (there && offset < law.forecastDays) return there;
    const memory =
      offset > last.offset
        ? law.weather.share * Math.exp(-(offset - last.offset) / law.weather.lastsDays)
        : 0;
    return { meanC: usualOf(offset) + levelC + memory * anomalyC, rangeC: usualRange, known: false };
  };
}

function daysKnown(known: (offset: number) => OutdoorDay | undefined, from: number, to: number) {
  return Array.from({ length: to - from + 1 }, (_, i) => ({
    offset: from + i,
    day: known(from + i),
  })).flatMap(({ offset, day }) => (day ? [{ offset, day }] : []));
}

function knownDay(knots: readonly Knot[], startMs: number): OutdoorDay | undefined {
  const hoursC = new Float64Array(24);
  for (let hour = 0; hour < 24; hour += 1) {
    const middleMs = startMs + (hour + 0.5) * hourMs;
    const value = lineAt(knots, middleMs, longestStepMs) ?? heldEnd(knots, middleMs);
    if (value === undefined) return undefined;
    hoursC[hour] = value;
  }
  const { meanC, hotC, coldC } = summaryOf(hoursC);
  return { meanC, rangeC: hotC - coldC, known: true };
}

/** A forecast may begin some hours after now, or end with its last full step: its ends are held for half a step. */
function heldEnd(knots: readonly Knot[], timeMs: number): number | undefined {
  const [first, last] = [knots[0]!, knots.at(-1)!];
  if (timeMs < first.timeMs && first.timeMs - timeMs <= longestStepMs / 2) return first.temperatureC;
  return timeMs > last.timeMs && timeMs - last.timeMs <= longestStepMs / 2 ? last.temperatureC : undefined;
}

/** For each instant what was measured, else what was forecast last, of all that was known. */
export function knownPoints(points: Season['outdoor'], asOfMs: number): Knot[] {
  const best = new Map<number, { temperatureC: number; issuedMs: number }>();
  for (const { time, temperatureC, issuedAt } of points) {
    const timeMs = Date.parse(time);
    const issuedMs = issuedAt === undefined ? Number.POSITIVE_INFINITY : Date.parse(issuedAt);
    if ((issuedAt === undefined ? timeMs : issuedMs) > asOfMs) continue;
    const there = best.get(timeMs);
    if (!there || issuedMs > there.issuedMs) best.set(timeMs, { temperatureC, issuedMs });
  }
  return [...best]
    .map(([timeMs, { temperatureC }]) => ({ timeMs, temperatureC }))
    .sort((a, b) => a.timeMs - b.timeMs);
}
