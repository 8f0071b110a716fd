import { beforeEach, describe, expect, it } from 'vitest';
import { type Compute, createForecasting, type Outcome } from '../../services/forecasting/forecasting.ts';
import { importSeason } from '../../services/forecasting/season.ts';
import type { Season } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { IssuedForecast, Store } from '../../services/store/store.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

const startMs = Date.parse('2026-05-18T08:00:00Z');
const first = 'crooked-pane';
const second = 'lean-to';

interface Call {
  season: Season;
  asOf: string;
  seed: number;
  answer(): void;
  fault(error: Error): void;
}

/** A computation that ends when the test says so. */
function heldCompute() {
  const calls: Call[] = [];
  const arrivals: ((call: Call) => void)[] = [];
  const compute: Compute = (season, asOf, { seed }) =>
    new Promise((resolve, reject) => {
      const outcome = { forecast: { asOf, placeId: season.place.id }, advice: { asOf } } as Outcome;
      const call = { season, asOf, seed, answer: () => resolve(outcome), fault: reject };
      calls.push(call);
      arrivals.shift()?.(call);
    });
  const nextCall = () => new Promise<Call>((resolve) => arrivals.push(resolve));
  return { calls, compute, nextCall };
}

describe('forecasting', () => {
  let store: Store;
  let nowMs: number;
  let held: ReturnType<typeof heldCompute>;
  let issued: IssuedForecast[];
  let faults: { placeId: string; error: unknown }[];
  let forecasting: ReturnType<typeof createForecasting>;
  beforeEach(async () => {
    store = openStore({ path: ':memory:' });
    nowMs = startMs;
    const season = smallSeason();
    for (const id of [first, second]) {
      const named = { ...season, place: { ...season.place, id } };
      await importSeason(store, named, { replace: false, atMs: startMs });
    }
    held = heldCompute();
    [issued, faults] = [[], []];
    forecasting = createForecasting({
      store,
      clock: { nowMs: () => nowMs },
      compute: held.compute,
      onIssued: (one) => void issued.push(one),
      onFault: (placeId, error) => void faults.push({ placeId, error }),
    });
    return () => store.close();
  });

  it('computes once for all who asked in one tick, as of the present, and keeps the outcome', async () => {
    const begun = held.nextCall();
    forecasting.request(first);
    forecasting.request(first);
    const answered = forecasting.now(first);
    (await begun).answer();
    await forecasting.idle();
    expect(held.calls.map((call) => [call.asOf, call.season.place.id])).toEqual([
      ['2026-05-18T08:00:00Z', first],
    ]);
    expect(issued).toEqual([await answered]);
    expect(store.issued.latest(first)).toEqual(await answered);
  });

  it('computes again, once, for what was asked during a computation, with what came meanwhile', async () => {
    let begun = held.nextCall();
    forecasting.request(first);
    const before = await begun;
    nowMs += 60_000;
    await store.readings.add(first, [{ sensorId: 'bench', timeMs: nowMs, temperatureC: 22 }]);
    forecasting.request(first);
    const answered = forecasting.now(first);
    begun = held.nextCall();
    before.answer();
    const after = await begun;
    after.answer();
    await forecasting.idle();
    expect(held.calls).toHaveLength(2);
    expect(after.season.readings.at(-1)?.time).toBe('2026-05-18T08:01:00Z');
    expect(before.season.readings).toHaveLength(after.season.readings.length - 1);
    expect((await answered).asOfMs).toBe(nowMs);
    expect(after.seed).toBe(before.seed);
  });

  it('computes one place after the other', async () => {
    let begun = held.nextCall();
    forecasting.request(first);
    forecasting.request(second);
    const one = await begun;
    expect(held.calls).toHaveLength(1);
    begun = held.nextCall();
    one.answer();
    (await begun).answer();
    await forecasting.idle();
    expect(issued.map((i) => i.placeId)).toEqual([first, second]);
  });

  it('tells of a computation that threw, lets the last outcome stand and goes on', async () => {
    let begun = held.nextCall();
    forecasting.request(first);
    (await begun).answer();
    await forecasting.idle();
    const kept = store.issued.latest(first);
    begun = held.nextCall();
    const refused = forecasting.now(first);
    (await begun).fault(new Error('the density is not finite'));
    await expect(refused).rejects.toThrow('not finite');
    await forecasting.idle();
    expect(faults.map((f) => f.placeId)).toEqual([first]);
    expect(store.issued.latest(first)).toEqual(kept);
    begun = held.nextCall();
    forecasting.request(second);
    (await begun).answer();
    await forecasting.idle();
    expect(issued.map((i) => i.placeId)).toEqual([first, second]);
  });

  it('answers for a place that is not there with a refusal, without computing', async () => {
    await expect(forecasting.now('nowhere')).rejects.toThrow('There is no place nowhere.');
    expect(held.calls).toEqual([]);
  });

  it('is idle at once when nothing was asked', async () => {
    await forecasting.idle();
    expect(held.calls).toEqual([]);
  });

  it('lets the running computation end when closed, and refuses what waited', async () => {
    const begun = held.nextCall();
    const running = forecasting.now(first);
    const call = await begun;
    const waiting = forecasting.now(second);
    const closed = forecasting.close();
    await expect(waiting).rejects.toThrow('closing');
    await expect(forecasting.now(first)).rejects.toThrow('closing');
    call.answer();
    await closed;
    expect((await running).placeId).toBe(first);
    expect(held.calls).toHaveLength(1);
  });
});
