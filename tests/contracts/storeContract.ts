/**
 * What every whole store keeps to: records, quarantine, arrivals, issued forecasts, warnings.
 * Readings have their own suite, because they may live elsewhere.
 */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Advice, Forecast } from '../../services/model/index.ts';
import { RefusalError } from '../../services/refusals.ts';
import type { RecordData, Store, Warning } from '../../services/store/store.ts';

export interface StoreSubject {
  store: Store;
  /** Closes and opens again on the same data. */
  reopen(): Promise<Store>;
}

const placeId = 'crooked-pane';
const place: RecordData['place'] = {
  id: placeId,
  name: 'Crooked Pane',
  kind: 'glasshouse',
  areaM2: 9,
  latitudeDeg: 50,
  longitudeDeg: 10,
  timeZone: 'Europe/Berlin',
  pests: ['trialeurodes-vaporariorum'],
  limits: {},
  seasonEnd: '10-15',
};
const count = (whitefly: number, id = 'c1'): RecordData['trapCount'] => ({
  id,
  trapId: 'door',
  time: '2026-05-13T07:00:00Z',
  exposureDays: 7,
  countedFraction: 1,
  card: 'new',
  counts: { whitefly },
});
const key = { kind: 'trapCount', placeId, id: 'c1' } as const;

export function storeContract(name: string, open: () => Promise<StoreSubject>): void {
  describe(`store ${name}`, () => {
    let subject: StoreSubject;
    let store: Store;
    const reopen = async () => {
      store = await subject.reopen();
    };
    beforeEach(async () => {
      subject = await open();
      store = subject.store;
    });
    afterEach(() => store.close());

    describe('records', () => {
      const put = (whitefly: number, atMs: number, idempotencyKey?: string) =>
        store.records.put({
          ...key,
          data: count(whitefly),
          atMs,
          ...(idempotencyKey !== undefined && { idempotencyKey }),
        });
      const present = () => store.records.get('trapCount', placeId, 'c1')?.data.counts.whitefly;

      it('keeps every version and shows the newest', () => {
        put(14, 1);
        expect(put(15, 2)).toEqual({ ...key, version: 2, changedAtMs: 2, deleted: false, data: count(15) });
        expect(store.records.list('trapCount', placeId).map((r) => r.data.counts)).toEqual([
          { whitefly: 15 },
        ]);
        expect(store.records.history('trapCount', placeId, 'c1').map((r) => r.data.counts.whitefly)).toEqual([
          14, 15,
        ]);
      });

      it('lists by id, one place and one kind at a time', () => {
        for (const id of ['c3', 'c1', 'c2']) store.records.put({ ...key, id, data: count(1, id), atMs: 1 });
        store.records.put({ ...key, placeId: 'elsewhere', data: count(9), atMs: 1 });
        expect(store.records.list('trapCount', placeId).map((r) => r.id)).toEqual(['c1', 'c2', 'c3']);
        expect(store.records.list('leafCheck', placeId)).toEqual([]);
        store.records.put({ ...key, placeId: 'elsewhere', data: count(8), atMs: 2 });
        expect(store.records.list('trapCount', placeId)).toHaveLength(3);
        expect(store.records.list('trapCount', 'elsewhere').map((r) => r.version)).toEqual([2]);
      });

      it('leaves a deleted record out and keeps its versions', () => {
        put(14, 1);
        expect(store.records.remove({ ...key, atMs: 2 })).toMatchObject({ version: 2, deleted: true });
        expect(store.records.get('trapCount', placeId, 'c1')).toBeUndefined();
        expect(store.records.list('trapCount', placeId)).toEqual([]);
        expect(store.records.history('trapCount', placeId, 'c1').map((r) => r.deleted)).toEqual([
          false,
          true,
        ]);
        expect(store.records.remove({ ...key, atMs: 3 })).toMatchObject({ version: 2 });
      });

      it('lists what was taken back, the last one first, until it is put back', () => {
        const taken = () => store.records.takenBack('trapCount', placeId).map(({ id }) => id);
        expect(taken()).toEqual([]);
        put(14, 1);
        store.records.put({ ...key, id: 'c2', data: count(3, 'c2'), atMs: 2 });
        store.records.remove({ ...key, id: 'c2', atMs: 3 });
        store.records.undo({ ...key, atMs: 4 });
        expect(taken()).toEqual(['c1', 'c2']);
        store.records.undo({ ...key, atMs: 5 });
        expect(taken()).toEqual(['c2']);
      });

      it('undoes an edit, a deletion, a first version and an undo, each as a new version', () => {
        put(14, 1);
        put(140, 2);
        expect(store.records.undo({ ...key, atMs: 3 })).toMatchObject({ version: 3, data: count(14) });
        expect(store.records.undo({ ...key, atMs: 4 })).toMatchObject({ version: 4, data: count(140) });
        store.records.remove({ ...key, atMs: 5 });
        store.records.undo({ ...key, atMs: 6 });
        expect(present()).toBe(140);
        store.records.put({ ...key, id: 'c2', data: count(3, 'c2'), atMs: 7 });
        expect(store.records.undo({ ...key, id: 'c2', atMs: 8 })).toMatchObject({
          version: 2,
          deleted: true,
        });
        expect(store.records.history('trapCount', placeId, 'c1')).toHaveLength(6);
      });

      it('refuses to delete or undo what never was', () => {
        const code = (act: () => unknown) => {
          try {
            act();
          } catch (error) {
            return error instanceof RefusalError ? error.refusal.code : error;
          }
          return 'no refusal';
        };
        expect(code(() => store.records.remove({ ...key, atMs: 1 }))).toBe('record-unknown');
        expect(code(() => store.records.undo({ ...key, atMs: 1 }))).toBe('record-unknown');
        expect(store.records.history('trapCount', placeId, 'c1')).toEqual([]);
      });

      it('answers a repeated key with the record of the first time', async () => {
        const first = put(14, 1, 'phone-1');
        put(15, 2, 'phone-2');
        expect(put(14, 3, 'phone-1')).toEqual(first);
        const undone = store.records.undo({ ...key, atMs: 4, idempotencyKey: 'phone-3' });
        await reopen();
        expect(store.records.undo({ ...key, atMs: 5, idempotencyKey: 'phone-3' })).toEqual(undone);
        expect(present()).toBe(14);
        expect(store.records.history('trapCount', placeId, 'c1')).toHaveLength(3);
      });

      it('lists the places that are not deleted, also after opening again', async () => {
        store.records.put({ kind: 'place', placeId, id: placeId, data: place, atMs: 1 });
        const other = { ...place, id: 'gone' };
        store.records.put({ kind: 'place', placeId: 'gone', id: 'gone', data: other, atMs: 1 });
        store.records.remove({ kind: 'place', placeId: 'gone', id: 'gone', atMs: 2 });
        await reopen();
        expect(store.records.places().map((r) => r.data)).toEqual([place]);
      });
    });

    describe('quarantine', () => {
      const message = (topic: string) => ({
        topic,
        payload: new TextEncoder().encode('{"temperatureC": nan}'),
        payloadBytes: 21,
        retained: true,
        arrivedMs: 5,
        code: 'value-missing',
        reason: 'nan is not a temperature.',
      });

      it('keeps a message as sent, with its reason, until it is settled', async () => {
        const kept = await store.quarantine.add({ ...message('a'), placeId });
        expect(kept).toEqual({ ...message('a'), placeId, id: kept.id });
        await reopen();
        expect(store.quarantine.get(kept.id)).toEqual(kept);
        store.quarantine.settle(kept.id, 'mended');
        expect(store.quarantine.list()).toEqual([]);
        expect(store.quarantine.list({ settledToo: true })).toEqual([{ ...kept, settled: 'mended' }]);
      });

      it('keeps one that comes again once, until it is settled', async () => {
        const first = await store.quarantine.add(message('a'));
        expect(store.quarantine.waiting()).toBe(1);
        expect(await store.quarantine.add(message('a'), { again: true })).toEqual(first);
        for (const other of [
          { code: 'value-not-finite' },
          { payload: new TextEncoder().encode('{}') },
          { topic: 'b' },
        ])
          await store.quarantine.add({ ...message('a'), ...other }, { again: true });
        expect(store.quarantine.waiting()).toBe(4);
        store.quarantine.settle(first.id, 'dismissed');
        expect((await store.quarantine.add(message('a'), { again: true })).id).not.toBe(first.id);
        await store.quarantine.add(message('a'));
        expect(store.quarantine.waiting()).toBe(5);
      });

      it('lists newest first, by place and up to a limit', async () => {
        await store.quarantine.add({ ...message('a'), placeId });
        await store.quarantine.add(message('b'));
        await store.quarantine.add({ ...message('c'), placeId });
        expect(store.quarantine.list().map((m) => m.topic)).toEqual(['c', 'b', 'a']);
        expect(store.quarantine.list({ placeId }).map((m) => m.topic)).toEqual(['c', 'a']);
        expect(store.quarantine.list({ limit: 1 }).map((m) => m.topic)).toEqual(['c']);
        expect(store.quarantine.get(999)).toBeUndefined();
      });

      it('keeps the first 4 kB of a large message and its whole length', async () => {
        const payload = new Uint8Array(10_000).fill(7);
        const kept = await store.quarantine.add({ ...message('a'), payload, payloadBytes: 1_000_000 });
        expect(kept.payload).toEqual(payload.subarray(0, 4096));
        expect(kept.payloadBytes).toBe(1_000_000);
      });
    });

    it('keeps the last 200 arrivals of a place, newest first', async () => {
      const arrival = (number: number, at = placeId) => ({
        placeId: at,
        topic: `t/${number}`,
        arrivedMs: number,
        payloadStart: '21.5',
        readAs: '21.5 °C',
      });
      store.arrivals.note(arrival(0, 'elsewhere'));
      for (let number = 1; number <= 203; number++) store.arrivals.note(arrival(number));
      const kept = store.arrivals.list(placeId);
      expect(kept).toHaveLength(200);
      expect([kept[0], kept.at(-1)]).toEqual([arrival(203), arrival(4)]);
      await reopen();
      expect(store.arrivals.list(placeId)).toEqual(kept);
      expect(store.arrivals.list('elsewhere')).toHaveLength(1);
    });

    describe('the air outdoors', () => {
      const hour = 3_600_000;
      const noon = Date.UTC(2026, 4, 13, 12);
      const ahead = (fromMs: number, temperatureC: number) =>
        [0, 3, 6].map((h) => ({ timeMs: fromMs + h * hour, temperatureC }));

      it('keeps what was measured beside every day’s forecast, in order', async () => {
        store.outdoor.issue(placeId, noon, ahead(noon, 9));
        store.outdoor.issue(placeId, noon + 24 * hour, ahead(noon, 11));
        store.outdoor.add(placeId, [{ timeMs: noon, temperatureC: 8 }]);
        await reopen();
        expect(store.outdoor.list(placeId).slice(0, 3)).toEqual([
          { timeMs: noon, temperatureC: 8 },
          { timeMs: noon, temperatureC: 9, issuedMs: noon },
          { timeMs: noon, temperatureC: 11, issuedMs: noon + 24 * hour },
        ]);
        expect(store.outdoor.lastIssuedMs(placeId)).toBe(noon + 24 * hour);
        expect(store.outdoor.lastIssuedMs('other')).toBeUndefined();
      });

      it('lets the day’s earlier forecast go only where a later one covers it', () => {
        store.outdoor.issue(placeId, noon, ahead(noon, 9));
        store.outdoor.issue(placeId, noon + 3 * hour, ahead(noon + 3 * hour, 11));
        const kept = store.outdoor
          .list(placeId)
          .map((point) => [(point.timeMs - noon) / hour, point.temperatureC]);
        expect(kept).toEqual([
          [0, 9],
          [3, 11],
          [6, 11],
          [9, 11],
        ]);
      });

      it('keeps one source, or none', async () => {
        const pointers = { time: '/hours', temperature: '/air' };
        const source = { url: 'https://weather.example.org/air.json', pointers, unit: 'Cel' as const };
        store.outdoor.keepSource(placeId, source);
        await reopen();
        expect(store.outdoor.source(placeId)).toEqual(source);
        store.outdoor.keepSource(placeId, undefined);
        expect(store.outdoor.source(placeId)).toBeUndefined();
      });

      it('forgets the points of one place only', () => {
        store.outdoor.issue(placeId, noon, ahead(noon, 9));
        store.outdoor.issue('other', noon, ahead(noon, 9));
        store.outdoor.clear(placeId);
        expect(store.outdoor.list(placeId)).toEqual([]);
        expect(store.outdoor.list('other')).toHaveLength(3);
      });
    });

    describe('issued forecasts', () => {
      const at = (time: string) => Date.parse(time);
      const issued = (time: string) => ({
        placeId,
        asOfMs: at(time),
        forecast: { placeId, asOf: time } as Forecast,
        advice: { placeId, sentence: time } as Advice,
      });

      it('keeps one a day, oldest first, and knows the latest', async () => {
        for (const time of ['2026-05-12T09:00:00Z', '2026-05-13T06:00:00Z', '2026-05-13T07:00:00Z'])
          store.issued.keep(issued(time));
        await reopen();
        expect(store.issued.list(placeId)).toEqual([
          issued('2026-05-12T09:00:00Z'),
          issued('2026-05-13T07:00:00Z'),
        ]);
        expect(store.issued.latest(placeId)).toEqual(issued('2026-05-13T07:00:00Z'));
        expect(store.issued.latest('elsewhere')).toBeUndefined();
        const times = ['2026-05-12T09:00:00Z', '2026-05-13T07:00:00Z'].map((time) => Date.parse(time));
        expect(store.issued.times(placeId)).toEqual(times);
        expect(store.issued.times('elsewhere')).toEqual([]);
        expect(store.issued.at(placeId, times[0]!)).toEqual(issued('2026-05-12T09:00:00Z'));
        expect(store.issued.at(placeId, times[0]! + 1)).toBeUndefined();
      });

      it('keeps the last one made before a count was entered', () => {
        store.issued.keep(issued('2026-05-13T06:00:00Z'));
        store.records.put({ ...key, data: count(14), atMs: at('2026-05-13T06:30:00Z') });
        store.issued.keep(issued('2026-05-13T07:00:00Z'));
        expect(store.issued.list(placeId).map((i) => i.forecast.asOf)).toEqual([
          '2026-05-13T06:00:00Z',
          '2026-05-13T07:00:00Z',
        ]);
      });
    });

    it('keeps warnings, nearest deadline first, and their last state', async () => {
      const warning = (id: string, deadlineMs: number): Warning => ({
        id,
        placeId,
        rule: 'order-by',
        raisedAtMs: 1,
        deadlineMs,
        text: 'Order by Mon 18 May.',
        reason: 'Whitefly will probably (8 of 10) pass your limit.',
        ends: 'when it is ordered',
        urgentFromMs: 5,
        state: 'open',
      });
      store.warnings.save(warning('late', 20));
      store.warnings.save(warning('soon', 10));
      store.warnings.save({ ...warning('late', 20), state: 'put-off', putOffUntilMs: 15 });
      await reopen();
      expect(store.warnings.list(placeId)).toEqual([
        warning('soon', 10),
        { ...warning('late', 20), state: 'put-off', putOffUntilMs: 15 },
      ]);
      expect(store.warnings.get(placeId, 'soon')).toEqual(warning('soon', 10));
      expect(store.warnings.get('elsewhere', 'soon')).toBeUndefined();
    });
  });
}
