/**
 * Speed as ratios against a baseline measured in the same run, so that two machines can be compared:
 * `npm run bench`. Never part of the tests: no timed assertion.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import { startBroker } from '../../services/broker/broker.ts';
import { startIngest } from '../../services/ingest/ingest.ts';
import { forecastAndAdvise, seasonSchema } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';
import { engineLines } from './engine.ts';
import { pageLines } from './pages.ts';

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

/**
 * Readings a second acknowledged at QoS 1 by the real broker, each on disk by then; publisher in the same
 * process. `inFlight` publishes wait for their acknowledgement at any time.
 */
async function acknowledgedPerSecond(path: string, readings: number, inFlight: number): Promise<number> {
  const store = openStore({ path });
  const nowMs = Date.parse(asOf);
  store.records.put({
    kind: 'place',
    placeId: 'here',
    id: 'here',
    data: { ...season.place, id: 'here' },
    atMs: nowMs,
  });
  const ingest = await startIngest({ store, clock: { nowMs: () => nowMs }, onChange: () => {} });
  const broker = await startBroker({ port: 0, beforeAcknowledge: ingest.handle });
  const board = await mqtt.connectAsync(`mqtt://127.0.0.1:${broker.port}`);
  let next = 0;
  const publishTheRest = async () => {
    while (next < readings) {
      const payload = JSON.stringify({ temperatureC: 15 + (next % 97) / 10, time: nowMs - next * 60_000 });
      next += 1;
      await board.publishAsync('glasstide/here/readings/bench', payload, { qos: 1 });
    }
  };
  const start = performance.now();
  await Promise.all(Array.from({ length: inFlight }, publishTheRest));
  const perSecond = (1000 * readings) / (performance.now() - start);
  const kept = await store.readings.range('here', { fromMs: 0, toMs: nowMs + 1 });
  if (kept.length !== readings) throw new Error(`${kept.length} of ${readings} readings were kept`);
  await board.endAsync();
  await broker.close();
  await ingest.close();
  await store.close();
  return perSecond;
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
  for (const [readings, inFlight] of [
    [500, 1],
    [5000, 50],
    [10_000, 500],
  ] as const) {
    const runs: number[] = [];
    for (let run = 0; run < 3; run += 1)
      runs.push(Math.round(await acknowledgedPerSecond(nextFile(), readings, inFlight)));
    console.log(`acknowledged and on disk, ${inFlight} in flight: ${runs.join(', ')} readings/s`);
  }
  for (const line of await engineLines(medianMs)) console.log(line);
  for (const line of await pageLines(season, asOf)) console.log(line);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
