/** What latitude and date alone say about warmth. */
import { dayMs, hourMs } from '../units.ts';
import type { Course } from './dailyCourse.ts';
import { dayOfYear } from './dayLength.ts';

/**
 * Mean temperature under glass by latitude and date: common practice, no source; only its slope matters once
 * there are readings. Warmest a month after the solstice.
 */
export function seasonalMean(latitudeDeg: number): Course {
  const north = latitudeDeg >= 0 ? 1 : -1;
  const meanC = 36 - 0.0085 * latitudeDeg ** 2;
  const halfRangeC = 0.2 * Math.abs(latitudeDeg);
  return (timeMs) =>
    meanC + north * halfRangeC * Math.cos(((dayOfYear(timeMs) - 203) / 365.25) * 2 * Math.PI);
}

/** A daily swing of 6 °C up and down around the seasonal mean, warmest two hours after noon. */
export function latitudeCourse(place: { latitudeDeg: number; longitudeDeg: number }): Course {
  const season = seasonalMean(place.latitudeDeg);
  return (timeMs) => {
    const solarHour = ((timeMs % dayMs) / hourMs + place.longitudeDeg / 15 + 24) % 24;
    return season(timeMs) + 6 * Math.cos(((solarHour - 14) / 24) * 2 * Math.PI);
  };
}
