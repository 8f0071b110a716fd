/**
 * The two numbers every degree-day method is made of, for a day between minC and maxC: degrees above a
 * threshold averaged over the day, and the share of the day spent above it.
 */

export interface Extremes {
  minC: number;
  maxC: number;
}

export type Primitive = (day: Extremes, thresholdC: number) => number;

/**
 * Degrees above the threshold, averaged over a day of straight lines. Lindsey & Newman 1956, Ecology 37:812;
 * Sevacherian, Stern & Mueller 1977, J Econ Entomol 70:399 (both from memory). Exact for any straight line.
 */
export const triangleAbove: Primitive = ({ minC, maxC }, thresholdC) => {
  if (thresholdC <= minC) return (minC + maxC) / 2 - thresholdC;
  return thresholdC >= maxC ? 0 : (maxC - thresholdC) ** 2 / (2 * (maxC - minC));
};

/**
 * Degrees above the threshold, averaged over a day shaped as a sine. Arnold 1960, Proc Am Soc Hort Sci 76:682;
 * Baskerville & Emin 1969, Ecology 50:514 (both from memory).
 */
export const sineAbove: Primitive = ({ minC, maxC }, thresholdC) => {
  const mean = (minC + maxC) / 2;
  if (thresholdC <= minC) return mean - thresholdC;
  if (thresholdC >= maxC) return 0;
  const halfRange = (maxC - minC) / 2;
  const angle = Math.asin((thresholdC - mean) / halfRange);
  return ((mean - thresholdC) * (Math.PI / 2 - angle) + halfRange * Math.cos(angle)) / Math.PI;
};

/** Share of the day above the threshold, by the same two shapes. */
export const shareAbove = {
  triangle: ({ minC, maxC }: Extremes, thresholdC: number): number => {
    if (thresholdC < minC) return 1;
    return thresholdC >= maxC ? 0 : (maxC - thresholdC) / (maxC - minC);
  },
  sine: ({ minC, maxC }: Extremes, thresholdC: number): number => {
    if (thresholdC < minC) return 1;
    if (thresholdC >= maxC) return 0;
    const angle = Math.asin((2 * thresholdC - minC - maxC) / (maxC - minC));
    return (Math.PI / 2 - angle) / Math.PI;
  },
};
