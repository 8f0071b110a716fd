/** Gathers what the page “Is all well?” and the metrics tell. */
import { statfs } from 'node:fs/promises';
import type { Clock } from '../clock.ts';
import type { Store } from '../store/store.ts';
import { type Check, checksOf, type Facts } from './checks.ts';
import { createMetrics, type Metrics } from './metrics.ts';

export type { Check } from './checks.ts';

export interface Watch extends Pick<Metrics, 'answered' | 'changed'> {
  checks(): Promise<Check[]>;
  metrics(): Promise<{ type: string; text: string }>;
}

export interface WatchParts {
  store: Store;
  clock: Clock;
  version: string;
  troubles(): string[];
  isLocked(): boolean;
  turnedAway(): Facts['turnedAway'];
  backup?: () => Facts['backup'];
  /** Folder of the database; left out, nothing is said of the disk. */
  dataDir?: string;
}

export function createWatch(parts: WatchParts): Watch {
  const metrics = createMetrics(parts);
  const { answered, changed } = metrics;
  return {
    answered,
    changed,
    checks: async () => checksOf(await factsOf(parts)),
    metrics: async () => metrics.text(await factsOf(parts)),
  };
}

async function factsOf(parts: WatchParts): Promise<Facts> {
  const { store, clock } = parts;
  return {
    nowMs: clock.nowMs(),
    locked: parts.isLocked(),
    places: await Promise.all(store.records.places().map(({ id, data }) => placeFacts(store, id, data.name))),
    waiting: store.quarantine.waiting(),
    turnedAway: parts.turnedAway(),
    backup: parts.backup?.(),
    disk: parts.dataDir === undefined ? undefined : await spaceIn(parts.dataDir),
    troubles: parts.troubles(),
  };
}

async function placeFacts(store: Store, id: string, name: string): Promise<Facts['places'][number]> {
  const latest = new Map((await store.readings.latest(id)).map((each) => [each.sensorId, each.timeMs]));
  const issued = store.issued.latest(id);
  return {
    id,
    name,
    ...(issued && { forecastAtMs: issued.asOfMs }),
    sensors: store.records.list('sensor', id).map(({ data: sensor }) => {
      const lastMs = latest.get(sensor.id);
      return { id: sensor.id, name: sensor.name, ...(lastMs !== undefined && { lastMs }) };
    }),
  };
}

async function spaceIn(folder: string): Promise<Facts['disk']> {
  try {
    const { bavail, bsize } = await statfs(folder);
    return { freeBytes: bavail * bsize };
  } catch {
    return undefined;
  }
}
