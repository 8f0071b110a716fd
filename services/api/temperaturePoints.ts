/** The temperature curve as the forecast uses it, as points for a chart. */
import type { TemperatureCurve } from '../model/index.ts';

export interface TemperaturePoint {
  timeMs: number;
  temperatureC: number;
  filledBy?: TemperatureCurve['filled'][number]['by'];
}

/** Knots of the curve within the window; at most about `most` of them, highs and lows kept. */
export function pointsOf(
  curve: TemperatureCurve,
  window: { fromMs: number; toMs: number },
  most = 2000,
): TemperaturePoint[] {
  const points: TemperaturePoint[] = [];
  curve.timesMs.forEach((timeMs, i) => {
    if (timeMs < window.fromMs || timeMs >= window.toMs) return;
    const stretch = curve.filled.find(({ fromMs, toMs }) => timeMs > fromMs && timeMs < toMs);
    const filledBy = stretch === undefined ? {} : { filledBy: stretch.by };
    points.push({ timeMs, temperatureC: curve.temperaturesC[i]!, ...filledBy });
  });
  return points.length <= most ? points : highsAndLows(points, Math.floor(most / 2));
}

/** The lowest and the highest of each of `groups` runs of points, in order of time. */
function highsAndLows(points: readonly TemperaturePoint[], groups: number): TemperaturePoint[] {
  const size = Math.ceil(points.length / groups);
  const kept: TemperaturePoint[] = [];
  for (let start = 0; start < points.length; start += size) {
    const run = points.slice(start, start + size);
    const low = run.reduce((a, b) => (b.temperatureC < a.temperatureC ? b : a));
    const high = run.reduce((a, b) => (b.temperatureC > a.temperatureC ? b : a));
    kept.push(...new Set(low.timeMs <= high.timeMs ? [low, high] : [high, low]));
  }
  return kept;
}
