/** A house that was measured each minute of a year by four sensors: its figure, its forecast, its memory (Linux). */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openHouse, placeId, startMs } from '../ingest/station.ts';

const minuteMs = 60_000;
const minutes = 525_600;
const sensors = 4;
/** Clock ticks a second in /proc, a constant of Linux on every common machine. */
const ticks = 100;

async function fillYear(path: string): Promise<void> {
  const store = openHouse(path);
  for (let from = 0; from < minutes; from += 1440) {
    const day = Array.from({ length: Math.min(1440, minutes - from) * sensors }, (_, i) => {
      const timeMs = startMs - (minutes - from - Math.floor(i / sensors)) * minuteMs;
      const warmthC = 18 + 6 * Math.sin((2 * Math.PI * (timeMs / 3_600_000 - 9)) / 24) + (i % sensors) * 0.3;
      const noiseC = ((i * 7919 + from) % 100) / 200;
      return {
        sensorId: `s${i % sensors}`,
        timeMs,
        temperatureC: Math.round(100 * (warmthC + noiseC)) / 100,
        humidityPct: 60 + (i % 20),
      };
    });
    await store.readings.add(placeId, day);
  }
  await store.close();
}

/** The built service on that house; processor time does not depend on what else the machine does. */
export async function yearLines(): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'glasstide-year-'));
  await fillYear(join(folder, 'glasstide.sqlite'));
  const env = {
    GLASSTIDE_DATA: folder,
    GLASSTIDE_HTTP_PORT: '0',
    GLASSTIDE_MQTT_PORT: '0',
    GLASSTIDE_CLOCK_START: new Date(startMs).toISOString(),
  };
  // As packaging/ starts it.
  const service = spawn(process.execPath, ['--max-old-space-size=512', 'dist/services/main.js'], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const [line] = await once(service.stdout, 'data');
    const address = String(line).replace('glasstide is at ', '').trim();
    const ask = async (path: string, method = 'GET') => {
      const headers = { 'idempotency-key': String(Math.random()) };
      const answer = await fetch(`${address}api/places/${placeId}/${path}`, { method, headers });
      if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}`);
      await answer.arrayBuffer();
    };
    const week = `from=${new Date(startMs - 7 * 1440 * minuteMs).toISOString()}&to=${new Date(startMs).toISOString()}`;
    const lines: string[] = [];
    const note = async (what: string, times: number, work: () => Promise<unknown>) => {
      await work();
      const before = usedMs(service.pid);
      const start = performance.now();
      for (let time = 0; time < times; time += 1) await work();
      const [used, took] = [usedMs(service.pid) - before, performance.now() - start].map((ms) => ms / times);
      const memory = `at most ${(mostKB(service.pid) / 1000).toFixed(0)} MB so far`;
      lines.push(
        `${what.padEnd(48)} ${used?.toFixed(0)} ms of processor, ${took?.toFixed(0)} ms in all, ${memory}`,
      );
    };
    await note('a year of minutes: figure of a week', 30, () => ask(`temperature?${week}`));
    await note('a year of minutes: hours of a week', 30, () => ask(`readings?${week}`));
    await note('a year of minutes: forecast and advice', 2, () => ask('outcome', 'POST'));
    return lines;
  } finally {
    service.kill();
    await once(service, 'exit');
    rmSync(folder, { recursive: true });
  }
}

/** User and system time so far (proc(5), fields 14 and 15 of stat). */
function usedMs(pid: number | undefined): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return (1000 * (Number(fields[11]) + Number(fields[12]))) / ticks;
}

/** The largest resident memory so far. */
function mostKB(pid: number | undefined): number {
  return Number(/VmHWM:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
}
