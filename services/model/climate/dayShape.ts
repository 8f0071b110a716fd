/**
 * The two numbers every degree-day method is made of, for a day of a given shape between its lowest and highest
 * temperature: degrees above a threshold averaged over the day, and the share of the day spent above it.
 */

export interface Extremes {
  minC: number;
  maxC: number;
}

export interface DayShape {
  degreesAbove(day: Extremes, thresholdC: number): number;
  shareAbove(day: Extremes, thresholdC: number): number;
}

/**
 * Straight lines; exact for any straight line, not only for half a day. Lindsey & Newman 1956, Ecology 37:812;
 * Sevacherian, Stern & Mueller 1977, J Econ Entomol 70:399 (both from memory).
 */
export const triangle: DayShape = {
  degreesAbove({ minC, maxC }, thresholdC) {
    if (thresholdC <= minC) return (minC + maxC) / 2 - thresholdC;
    return thresholdC >= maxC ? 0 : (maxC - thresholdC) ** 2 / (2 * (maxC - minC));
  },
  shareAbove({ minC, maxC }, thresholdC) {
    if (thresholdC < minC) return 1;
    return thresholdC >= maxC ? 0 : (maxC - thresholdC) / (maxC - minC);
  },
};

/**
 * A sine around the mean of both. Arnold 1960, Proc Am Soc Hort Sci 76:682; Baskerville & Emin 1969,
 * Ecology 50:514 (both from memory).
 */
export const sine: DayShape = {
  degreesAbove({ minC, maxC }, thresholdC) {
    const meanC = (minC + maxC) / 2;
    if (thresholdC <= minC) return meanC - thresholdC;
    if (thresholdC >= maxC) return 0;
    const angle = crossingAngle({ minC, maxC }, thresholdC);
    return ((meanC - thresholdC) * (Math.PI / 2 - angle) + ((maxC - minC) / 2) * Math.cos(angle)) / Math.PI;
  },
  shareAbove({ minC, maxC }, thresholdC) {
    if (thresholdC < minC) return 1;
    return thresholdC >= maxC ? 0 : (Math.PI / 2 - crossingAngle({ minC, maxC }, thresholdC)) / Math.PI;
  },
};

/** Phase at which the sine passes the threshold; 0 at the mean. */
function crossingAngle({ minC, maxC }: Extremes, thresholdC: number): number {
  return Math.asin((2 * thresholdC - minC - maxC) / (maxC - minC));
}
