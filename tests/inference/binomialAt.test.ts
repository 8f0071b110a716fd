import { describe, expect, it } from 'vitest';
import { binomialAt, binomialPmf } from '../../services/model/inference/binomialAt.ts';

/** n! / (k! (n - k)!) p^k (1 - p)^(n - k), in products. */
function exact(n: number, k: number, p: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways *= (n - k + i) / i;
  return ways * p ** k * (1 - p) ** (n - k);
}

describe('binomial counts', () => {
  it.each([0, 0.03, 0.31, 0.5, 0.86, 1])('the chances at a share of %d are those of the formula', (share) => {
    const chances = binomialPmf(10, share);
    expect(chances).toHaveLength(11);
    for (const [k, chance] of chances.entries()) expect(chance).toBeCloseTo(exact(10, k, share), 12);
  });

  it('a uniform number stands for the smallest count whose distribution function reaches it', () => {
    // Binomial(10, 0.2): the distribution function is 0.107, 0.376, 0.678, 0.879, 0.967 at 0 to 4.
    expect([0.05, 0.2, 0.5, 0.8, 0.95].map((u) => binomialAt(10, 0.2, u))).toEqual([0, 1, 2, 3, 4]);
    expect([binomialAt(10, 0, 0.999), binomialAt(10, 1, 0.001)]).toEqual([0, 10]);
  });

  it('more never gives fewer for the same draw', () => {
    for (const uniform of [0.02, 0.4, 0.77, 0.995]) {
      const counts = Array.from({ length: 41 }, (_, i) => binomialAt(10, i / 40, uniform));
      expect(counts).toEqual([...counts].sort((a, b) => a - b));
    }
  });
});
