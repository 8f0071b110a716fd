/**
 * Speed as ratios against a baseline measured in the same run, so that two machines can be compared:
 * `npm run bench`. Never part of the tests: no timed assertion.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { forecastAndAdvise, seasonSchema } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';
import { engineLines } from './engine.ts';
import { floodLine } from './flood.ts';
import { acknowledgedPerSecond, ingestionLines } from './ingestion.ts';
import { pageLines } from './pages.ts';
import { planLines, weeklyLines } from './weekly.ts';
import { yearLines } from './year.ts';

const season = seasonSchema.parse(JSON.parse(readFileSync('tests/fixtures/small-season.json', 'utf8')));
const asOf = '2026-05-24T09:00:00Z';

/** Median milliseconds of five runs after one to warm up. */
async function medianMs(work: () => unknown): Promise<number> {
  await work();
  const times: number[] = [];
  for (let run = 0; run < 5; run += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[2] ?? Number.NaN;
}

/** Ten million exponentials: the unit of the arithmetic rows. */
function arithmetic(): number {
  let sum = 0;
  for (let i = 0; i < 1e7; i += 1) sum += Math.exp(-i * 1e-7);
  return sum;
}

async function storeReadings(path: string, batch: number): Promise<void> {
  const store = openStore({ path });
  const rows = Array.from({ length: 20_000 }, (_, i) => ({
    sensorId: 'bench',
    timeMs: i * 60_000,
    temperatureC: 20,
  }));
  const waiting: Promise<unknown>[] = [];
  for (let i = 0; i < rows.length; i += batch)
    waiting.push(store.readings.add('here', rows.slice(i, i + batch)));
  await Promise.all(waiting);
  await store.close();
}

const folder = mkdtempSync(join(tmpdir(), 'glasstide-bench-'));
let files = 0;
const nextFile = () => {
  files += 1;
  return join(folder, `${files}.db`);
};
try {
  const baseline = await medianMs(arithmetic);
  const memory = await medianMs(() => storeReadings(':memory:', 20_000));
  const rows: [what: string, ms: number, unit: string, baselineMs: number][] = [
    [
      'forecast and advice, three weeks, one pest',
      await medianMs(() => forecastAndAdvise(season, asOf)),
      'arithmetic',
      baseline,
    ],
    [
      'the same, 1,000 members',
      await medianMs(() => forecastAndAdvise(season, asOf, { members: 1000 })),
      'arithmetic',
      baseline,
    ],
    [
      '20,000 readings on disk, one batch',
      await medianMs(() => storeReadings(nextFile(), 20_000)),
      'in memory',
      memory,
    ],
    [
      '20,000 readings on disk, one by one in flight',
      await medianMs(() => storeReadings(nextFile(), 1)),
      'in memory',
      memory,
    ],
  ];
  console.log(
    `baseline: ten million exponentials ${baseline.toFixed(0)} ms, 20,000 readings in memory ${memory.toFixed(0)} ms`,
  );
  for (const [what, ms, unit, base] of rows) {
    console.log(
      `${what.padEnd(48)} ${ms.toFixed(0).padStart(6)} ms  ${(ms / base).toFixed(1).padStart(6)} x ${unit}`,
    );
  }
  for (const line of await ingestionLines(nextFile)) console.log(line);
  console.log(`one at a time: ${Math.round(await acknowledgedPerSecond(nextFile(), 500, 1))} readings/s`);
  console.log(await floodLine(nextFile()));
  for (const line of await yearLines()) console.log(line);
  for (const line of await engineLines(medianMs)) console.log(line);
  for (const line of [...planLines(), ...weeklyLines()]) console.log(line);
  for (const line of await pageLines(season, asOf)) console.log(line);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
