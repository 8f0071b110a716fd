/** A house for tests: the real store in memory, a clock that is set by hand, and no forecast. */
import { createAccess } from '../../services/access/door.ts';
import { buildApp } from '../../services/api/app.ts';
import { type Change, createChanges } from '../../services/api/changes.ts';
import type { ApiDeps } from '../../services/api/deps.ts';
import { files } from '../../services/forecasting/files.ts';
import { createWatch } from '../../services/metrics/watch.ts';
import type { Place } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';

export const aPlace: Place = {
  id: 'lean-to',
  name: 'Lean-to',
  kind: 'glasshouse',
  areaM2: 11,
  latitudeDeg: 51.2,
  longitudeDeg: 0.4,
  timeZone: 'Europe/London',
  pests: ['trialeurodes-vaporariorum', 'aphis-gossypii'],
  limits: { 'trialeurodes-vaporariorum': 7 },
  seasonEnd: '10-15',
};

export async function openHouse(others: Partial<ApiDeps> = {}) {
  const store = openStore({ path: ':memory:' });
  const changes = createChanges();
  const told: Change[] = [];
  changes.listen((change) => told.push(change));
  const clock = { ms: Date.parse('2026-05-13T06:10:00Z'), nowMs: () => clock.ms };
  const access = createAccess({ credentials: store.credentials, clock });
  const watch = createWatch({
    store,
    clock,
    version: '0.0.0',
    troubles: () => [],
    isLocked: () => !access.isOpen(),
    turnedAway: () => ({ total: 0, latest: [] }),
  });
  const app = await buildApp({
    store,
    clock,
    access,
    watch,
    secure: false,
    changes,
    forecastNow: () => Promise.reject(new Error('this house works out no forecast')),
    reread: async (ids) => ({ mended: ids.length, stillRefused: 0 }),
    season: files,
    troubles: () => [],
    telling: {
      settings: () => ({ mailTo: [], quietFromHour: 21, quietToHour: 7 }),
      canMail: false,
      pushPublicKey: '',
      tryOut: async () => undefined,
      tryMqtt: async () => true,
      feed: () => undefined,
    },
    outdoor: { now: async () => undefined, afresh: () => {}, troubleOf: () => undefined },
    demo: false,
    version: '0.0.0',
    log: 'silent',
    ...others,
  });
  let keys = 0;
  /** Sends a write with a fresh key, or with the one named. */
  const send = (method: 'POST' | 'PUT' | 'DELETE', url: string, payload?: unknown, key = `key-${keys++}`) =>
    app.inject({
      method,
      url,
      headers: {
        'idempotency-key': key,
        ...(payload === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(payload === undefined
        ? {}
        : { payload: typeof payload === 'string' ? payload : JSON.stringify(payload) }),
    });
  const close = async () => {
    await app.close();
    await store.close();
  };
  return { app, access, store, changes, clock, told, send, close };
}
