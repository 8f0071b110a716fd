import { expect, test } from 'vitest';
import { clumped, logNormalAround, normal, poisson, stream } from '../../simulators/random.ts';

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

// Chi-square of 20 classes at 0.1 %: 43.8 with 19 degrees of freedom.
test.each([0, 1])('value %d of the streams of neighbouring days is uniform over the days', (which) => {
  const classes = new Array<number>(20).fill(0);
  for (let day = 0; day < 4000; day += 1) {
    const random = stream(7, `round ${day}`);
    for (let skipped = 0; skipped < which; skipped += 1) random();
    classes[Math.floor(20 * random())]! += 1;
  }
  const chiSquare = classes.reduce((sum, n) => sum + (n - 200) ** 2 / 200, 0);
  expect(chiSquare).toBeLessThan(43.8);
});

test('neighbouring days do not begin alike', () => {
  const first = Array.from({ length: 4000 }, (_, day) => stream(7, `round ${day}`)() - 0.5);
  const together = mean(first.slice(1).map((value, n) => value * first[n]!)) * 12;
  // Correlation of 4,000 independent pairs: within 3.3 standard errors.
  expect(Math.abs(together)).toBeLessThan(3.3 / Math.sqrt(4000));
});

test('means and spreads are what they say', () => {
  const random = stream(1, 'moments');
  const many = <T>(draw: () => T) => Array.from({ length: 20_000 }, draw);
  expect(mean(many(() => poisson(random, 3.2)))).toBeCloseTo(3.2, 1);
  expect(mean(many(() => poisson(random, 60)))).toBeCloseTo(60, 0);
  expect(mean(many(() => logNormalAround(random, 10, 0.3)))).toBeCloseTo(10, 0);
  const normals = many(() => normal(random, 2, 3));
  expect(mean(normals.map((value) => (value - 2) ** 2))).toBeCloseTo(9, 0);
  // Negative binomial: variance m + m^2 / k.
  const counts = many(() => clumped(random, 4, 2));
  expect(mean(counts.map((count) => (count - 4) ** 2)) / 12).toBeCloseTo(1, 1);
});
