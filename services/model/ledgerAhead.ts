/** Expected dates of the ledger: the outlook's members, the spread of insects and the doubt of the constants. */
import type { TemperatureOutlook } from './climate/outlook.ts';
import { normalQuantile } from './numerics/distributions.ts';
import { quantileRange } from './numerics/quantiles.ts';
import type { DateRange } from './outcome.ts';
import type { Development } from './species/record.ts';
import { dayMs, hourMs } from './units.ts';

/** Degree-days gained since `fromMs` at the end of each hour ahead, one row a member. */
export interface GainAhead {
  fromMs: number;
  endsMs: Float64Array;
  gained: Float64Array[];
}

/** Standard deviation of the logarithm of development speed between published lines; judgement. */
const speedSdLog = 0.08;
/** Equally likely standard normal deviates; fixed ones, so that the dates need no random numbers. */
const deviates = Array.from({ length: 15 }, (_, i) => normalQuantile((i + 0.5) / 15));

/** Gain of every member from `fromMs` on, under the linear law with a horizontal cut-off at the plateau. */
export function gainAhead(
  outlook: TemperatureOutlook,
  { lowerC, plateauC }: Development,
  fromMs: number,
): GainAhead {
  const { startMs, hourlyC, anomalyC } = outlook;
  const endsMs = Float64Array.from(hourlyC, (_, hour) => startMs + (hour + 1) * hourMs);
  const members = anomalyC.length > 0 ? anomalyC : [new Float64Array(Math.ceil(hourlyC.length / 24))];
  const gained = members.map((anomaly) => {
    let total = 0;
    return Float64Array.from(hourlyC, (baseC, hour) => {
      const temperatureC = baseC + anomaly[Math.floor(hour / 24)]!;
      const days = Math.max(0, Math.min(hourMs, endsMs[hour]! - fromMs)) / dayMs;
      total += days * Math.max(0, Math.min(temperatureC, plateauC) - lowerC);
      return total;
    });
  });
  return { fromMs, endsMs, gained };
}

/**
 * When `needed` degree-days are reached of which `soFar` are behind; `cv` is the spread between insects.
 * Undefined when the outlook is too cold for some members ever to get there.
 */
export function expectedDate(
  ahead: GainAhead,
  { soFar, needed, cv }: { soFar: number; needed: number; cv: number },
): DateRange | undefined {
  const sdLog = Math.hypot(speedSdLog, cv);
  const left = deviates.map((deviate) => needed * Math.exp(sdLog * deviate) - soFar);
  const times = ahead.gained.flatMap((gained) => left.map((degreeDays) => timeOf(ahead, gained, degreeDays)));
  // Sorted as plain numbers first: several times faster than sorting inside with its weights.
  const range = quantileRange(Float64Array.from(times).sort());
  if (!Object.values(range).every(Number.isFinite)) return undefined;
  return mapRange(range, (ms) => new Date(ms).toISOString());
}

/** A date that is known: all bounds equal. */
export function measuredDate(ms: number): DateRange {
  const at = new Date(ms).toISOString();
  return { q025: at, q10: at, q25: at, q50: at, q75: at, q90: at, q975: at };
}

function mapRange(range: Record<keyof DateRange, number>, text: (ms: number) => string): DateRange {
  const entries = Object.entries(range).map(([bound, ms]) => [bound, text(ms)] as const);
  return Object.fromEntries(entries) as DateRange;
}

/** Linear inside the hour; beyond the outlook the gain of its last week goes on. */
function timeOf({ fromMs, endsMs }: GainAhead, gained: Float64Array, degreeDays: number): number {
  if (degreeDays <= 0) return fromMs;
  const hour = firstAtLeast(gained, degreeDays);
  if (hour === gained.length) {
    const last = gained.at(-1) ?? 0;
    const weekDays = Math.min(7, gained.length / 24);
    const aDay = (last - (gained[gained.length - 1 - weekDays * 24] ?? 0)) / weekDays;
    return (endsMs.at(-1) ?? fromMs) + ((degreeDays - last) / aDay) * dayMs;
  }
  const before = gained[hour - 1] ?? 0;
  const share = (degreeDays - before) / (gained[hour]! - before);
  return Math.max(fromMs, endsMs[hour]! - (1 - share) * hourMs);
}

function firstAtLeast(ascending: Float64Array, value: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
