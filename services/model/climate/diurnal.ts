/** Daily courses of temperature through a minimum and a maximum. Hours are solar: 12 is the sun's noon. */

/**
 * De Wit 1978 (from memory, through Reicosky 1989): half cosines between neighbouring extremes, which must
 * enclose the instant.
 */
export function halfCosine(
  extremes: readonly { timeMs: number; temperatureC: number }[],
  timeMs: number,
): number {
  const after = extremes.findIndex((extreme, i) => i > 0 && extreme.timeMs >= timeMs);
  const from = extremes[after - 1];
  const to = extremes[after];
  if (!from || !to) throw new RangeError('the instant lies outside the known extremes');
  const share = (timeMs - from.timeMs) / (to.timeMs - from.timeMs);
  return from.temperatureC + ((to.temperatureC - from.temperatureC) * (1 - Math.cos(Math.PI * share))) / 2;
}
