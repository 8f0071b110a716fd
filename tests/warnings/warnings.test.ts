import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Advice } from '../../services/model/index.ts';
import { adviseFrom } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { updateWarnings } from '../../services/warnings/warnings.ts';
import { asOf, asOfMs, fixedFit, invented } from '../planning/season.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
let store: Store;

beforeEach(() => {
  store = openStore({ path: ':memory:' });
  const { place } = invented();
  store.records.put({ kind: 'place', placeId: place.id, id: place.id, data: place, atMs: asOfMs });
});
afterEach(() => store.close());

function issue(left: number, atMs = asOfMs): Advice {
  const fit = fixedFit({ left, released: 0.1 });
  const advice = adviseFrom(invented(), fit, asOf);
  store.issued.keep({ placeId: 'pear-yard', asOfMs: atMs, forecast: fit.forecast, advice });
  return advice;
}
const open = async (nowMs: number) => (await updateWarnings(store, 'pear-yard', nowMs)).map((w) => w.rule);

describe('warnings', () => {
  it('raises the order-by day once, with its deadline at the supplier’s hour of that local day', async () => {
    issue(0.8);
    expect(await open(asOfMs)).toEqual(['order-by']);
    expect(await open(asOfMs + hourMs)).toEqual(['order-by']);
    const [warning] = store.warnings.list('pear-yard');
    // Monday 18 May 2026, noon in London summer time.
    expect(new Date(warning?.deadlineMs ?? 0).toISOString()).toBe('2026-05-18T11:00:00.000Z');
    expect(warning?.raisedAtMs).toBe(asOfMs);
  });

  it('withdraws it when the advice changes, and raises it again when it comes back', async () => {
    issue(0.8);
    await open(asOfMs);
    issue(0.1, asOfMs + dayMs);
    expect(await open(asOfMs + dayMs)).toEqual([]);
    expect(store.warnings.list('pear-yard').map((w) => w.state)).toEqual(['withdrawn']);
    issue(0.8, asOfMs + 2 * dayMs);
    expect(await open(asOfMs + 2 * dayMs)).toEqual(['order-by']);
  });

  it('keeps quiet while put off, wakes afterwards, and stays closed once closed', async () => {
    issue(0.8);
    await open(asOfMs);
    const [raised] = store.warnings.list('pear-yard');
    store.warnings.save({ ...raised!, state: 'put-off', putOffUntilMs: asOfMs + dayMs });
    expect(await open(asOfMs + hourMs)).toEqual([]);
    expect(await open(asOfMs + dayMs)).toEqual(['order-by']);
    store.warnings.save({ ...raised!, state: 'closed' });
    expect(await open(asOfMs + dayMs + hourMs)).toEqual([]);
  });

  it('says when a count is due and when a sensor has been silent for a day', async () => {
    issue(0.1);
    await store.readings.add('pear-yard', [{ sensorId: 'bench', timeMs: asOfMs, temperatureC: 19 }]);
    expect(await open(asOfMs + hourMs)).toEqual([]);
    expect((await open(asOfMs + 7 * dayMs)).sort()).toEqual(['count-due', 'sensor-silent']);
  });

  it('has nothing to say of a place without a forecast', async () => {
    expect(await open(asOfMs)).toEqual([]);
    expect(await updateWarnings(store, 'nowhere', asOfMs)).toEqual([]);
  });
});
