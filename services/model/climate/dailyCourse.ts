/** Daily courses that stand in for missing readings: through typed-in extremes, or the habit of the days around. */
import type { Place } from '../season.ts';
import { dayMs, hourMs } from '../units.ts';
import { sunTimes } from './dayLength.ts';
import { campbellNormanC } from './diurnal.ts';
import { between, type Knot, lineAt, mean } from './knots.ts';

export type Course = (timeMs: number) => number;

/** Lowest and highest of one local day. */
export interface ExtremesDay {
  startMs: number;
  endMs: number;
  minC: number;
  maxC: number;
}

/** How far around a gap its neighbours' habits are learned. */
export const aroundMs = 7 * dayMs;
/** What sets the edge of a gap apart from its neighbours' habits is weather, and lasts about a day. */
const weatherMs = dayMs;

/**
 * Campbell & Norman's day with their choice of extremes (equation 2.3, from memory): until 5 o'clock solar time
 * the night falls from the highest of the day before, after 14 o'clock towards the lowest of the next day.
 * Of the published days it came closest to hourly readings of three unheated and heated houses.
 */
export function courseOfExtremes(
  day: ExtremesDay,
  neighbours: { before?: ExtremesDay | undefined; after?: ExtremesDay | undefined },
  place: Pick<Place, 'latitudeDeg' | 'longitudeDeg'>,
): Course {
  const { noonMs } = sunTimes((day.startMs + day.endMs) / 2, place);
  const before = neighbours.before?.endMs === day.startMs ? neighbours.before : day;
  const after = neighbours.after?.startMs === day.endMs ? neighbours.after : day;
  return (timeMs) => {
    const hour = 12 + (timeMs - noonMs) / hourMs;
    return campbellNormanC(
      { minC: (hour > 14 ? after : day).minC, maxC: (hour <= 5 ? before : day).maxC },
      hour,
    );
  };
}

/** A stretch without knots; an edge is absent where the gap is open. */
export interface Gap {
  fromMs: number;
  toMs: number;
  before?: Knot | undefined;
  after?: Knot | undefined;
}

/** The habit of the days around a gap plus what is left over at each edge, fading away from it. */
export function courseAcross(knots: readonly Knot[], gap: Gap): Course {
  const habit = dailyHabit([
    ...between(knots, gap.fromMs - aroundMs, gap.fromMs),
    ...between(knots, gap.toMs, gap.toMs + aroundMs),
  ]);
  const leftover = (edge: Knot | undefined) => (edge ? edge.temperatureC - habit(edge.timeMs) : 0);
  const first = leftover(gap.before);
  const last = leftover(gap.after);
  const shareOf = (timeMs: number) => {
    if (!gap.before) return 1;
    return gap.after ? (timeMs - gap.fromMs) / (gap.toMs - gap.fromMs) : 0;
  };
  return (timeMs) => {
    const share = shareOf(timeMs);
    const fromFirst = first * (1 - share) * Math.exp(-(timeMs - gap.fromMs) / weatherMs);
    const fromLast = last * share * Math.exp(-(gap.toMs - timeMs) / weatherMs);
    return habit(timeMs) + fromFirst + fromLast;
  };
}

/** Mean by time of day (UTC, which no clock change moves), linear between the middles of hours. */
export function dailyHabit(values: readonly Knot[]): Course {
  const hours = Array.from({ length: 24 }, () => [] as number[]);
  for (const { timeMs, temperatureC } of values)
    hours[Math.floor((timeMs % dayMs) / hourMs)]!.push(temperatureC);
  const anchors = hours.flatMap((inHour, hour) => {
    const temperatureC = mean(inHour);
    return temperatureC === undefined ? [] : [{ timeMs: (hour + 0.5) * hourMs, temperatureC }];
  });
  // The same day before and after, so that midnight is like any other hour and unseen hours are bridged.
  const threeDays = [-dayMs, 0, dayMs].flatMap((shift) =>
    anchors.map((anchor) => ({ ...anchor, timeMs: anchor.timeMs + shift })),
  );
  return (timeMs) => lineAt(threeDays, timeMs % dayMs, dayMs)!;
}
