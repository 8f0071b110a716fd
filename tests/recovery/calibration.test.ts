/**
 * Simulation-based calibration over 200 drawn seasons (Talts et al. 2018, arXiv:1804.06788): places of the truth are
 * uniform, so that ranges hold what they promise when the model is right.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { coverage } from '../../services/model/scoring/coverage.ts';
import { type Quantity, quantityNames } from '../../studies/calibration.ts';
import type { CalibrationTask } from '../../studies/calibrationWorker.ts';
import { runJobs } from '../../studies/pool.ts';

const seasons = 200;
/** As many as the forecast has; with 150 eggs a day lay inside 8 of 10 only 71 times of 100. */
const members = 300;
const bins = 10;
/** 1 % point of chi-square with 9 degrees of freedom (Abramowitz & Stegun 1964, table 26.8). */
const critical = 21.666;

describe('simulation-based calibration', () => {
  let places: Record<Quantity, number>[] = [];
  // On every core, in the order of the seeds: the numbers do not depend on how many there are.
  const folder = mkdtempSync(join(tmpdir(), 'calibration-'));
  beforeAll(async () => {
    places = await runJobs<CalibrationTask, Record<Quantity, number>>({
      jobs: Array.from({ length: seasons }, (_, i) => ({
        key: `seed ${i + 1}`,
        task: { seed: i + 1, members },
      })),
      file: join(folder, 'places.jsonl'),
      worker: new URL('../../studies/calibrationWorker.ts', import.meta.url),
      threads: availableParallelism(),
      say: () => {},
    });
  }, 900_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each(quantityNames)('%s: places of the truth are uniform (chi-square at one in a hundred)', (name) => {
    const expected = seasons / bins;
    const counts = new Array<number>(bins).fill(0);
    for (const place of places) {
      const bin = Math.min(bins - 1, Math.floor(place[name] * bins));
      counts[bin] = counts[bin]! + 1;
    }
    const chiSquare = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    expect(chiSquare).toBeLessThan(critical);
  });

  it.each(quantityNames)('%s: lies inside half, 8 of 10 and 19 of 20 at about these rates', (name) => {
    const own = places.map((place) => place[name]);
    for (const share of [0.5, 0.8, 0.95]) {
      // Three standard deviations of a binomial share of 200.
      const tolerance = 3 * Math.sqrt((share * (1 - share)) / seasons);
      expect(Math.abs(coverage(own, share) - share)).toBeLessThan(tolerance);
    }
  });
});
