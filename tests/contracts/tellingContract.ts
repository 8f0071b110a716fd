/** What every store keeps of the telling: settings, outbox, phones, calendar, jobs, secrets. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Phone, Store, TellingSettings } from '../../services/store/store.ts';
import type { StoreSubject } from './storeContract.ts';

const placeId = 'crooked-pane';
const mail = { channel: 'mail', to: 'ada@example.org' } as const;
const raised = { ...mail, placeId, event: 'raised', about: 'count-due@1', createdMs: 10 } as const;

export function tellingContract(name: string, open: () => Promise<StoreSubject>): void {
  describe(`what is told, ${name}`, () => {
    let store: Store;
    let reopen: () => Promise<void>;
    beforeEach(async () => {
      const subject = await open();
      store = subject.store;
      reopen = async () => {
        store = await subject.reopen();
      };
    });

    it('keeps an entry waiting over a restart, and takes the same one once', async () => {
      store.telling.outbox.add(raised);
      store.telling.outbox.add({ ...raised, createdMs: 11 });
      await reopen();
      const [entry, ...others] = store.telling.outbox.waiting(placeId);
      expect(others).toEqual([]);
      expect(entry).toEqual({ ...raised, id: entry?.id, state: 'waiting', attempts: 0, nextTryMs: 10 });
      expect(store.telling.outbox.waiting('elsewhere')).toEqual([]);
    });

    it('postpones with the words of the fault, and settles for good', async () => {
      store.telling.outbox.add(raised);
      const id = store.telling.outbox.waiting(placeId)[0]?.id ?? 0;
      store.telling.outbox.postpone([id], 70, 'The mail server did not answer.');
      await reopen();
      expect(store.telling.outbox.waiting(placeId)).toMatchObject([
        { attempts: 1, nextTryMs: 70, fault: 'The mail server did not answer.' },
      ]);
      expect(store.telling.outbox.lastSentMs(placeId, mail)).toBeUndefined();
      store.telling.outbox.settle([id], 'sent', 90);
      store.telling.outbox.add(raised);
      expect(store.telling.outbox.waiting(placeId)).toEqual([]);
      expect(store.telling.outbox.settled(placeId, 5)).toMatchObject([{ id, state: 'sent', settledMs: 90 }]);
      expect(store.telling.outbox.find(raised)).toMatchObject({ id, state: 'sent' });
      expect(store.telling.outbox.lastSentMs(placeId, mail)).toBe(90);
      expect(store.telling.outbox.lastSentMs(placeId, { ...mail, to: 'bo@example.org' })).toBeUndefined();
    });

    it('knows a phone by its endpoint and takes its new keys', () => {
      const phone: Phone = {
        placeId,
        id: 'p1',
        endpoint: 'https://push.example.org/1',
        p256dh: 'a',
        auth: 'b',
        name: 'kitchen phone',
        addedMs: 1,
      };
      store.telling.phones.save(phone);
      store.telling.phones.save({ ...phone, id: 'p2', auth: 'c' });
      expect(store.telling.phones.list(placeId)).toEqual([{ ...phone, auth: 'c' }]);
      store.telling.phones.remove(placeId, 'p1');
      expect(store.telling.phones.list(placeId)).toEqual([]);
    });

    it('keeps settings, calendar entries, jobs and the first of a secret', async () => {
      const settings: TellingSettings = {
        mailTo: ['ada@example.org'],
        quietFromHour: 21,
        quietToHour: 7,
        letter: { weekday: 7, hour: 18 },
      };
      const entry = { placeId, uid: 'a', sequence: 0, changedMs: 5, cancelled: false, content: '{}' };
      store.telling.keepSettings(placeId, settings);
      store.telling.calendar.save(entry);
      store.telling.calendar.save({ ...entry, sequence: 1, cancelled: true });
      store.telling.calendar.save({ ...entry, uid: 'b' });
      store.telling.calendar.remove(placeId, 'b');
      store.telling.jobs.done(placeId, 'letter', 20);
      expect(store.telling.secret('pair', () => 'first')).toBe('first');
      await reopen();
      expect(store.telling.settings(placeId)).toEqual(settings);
      expect(store.telling.settings('elsewhere')).toBeUndefined();
      expect(store.telling.calendar.list(placeId)).toEqual([{ ...entry, sequence: 1, cancelled: true }]);
      expect(store.telling.jobs.lastDueMs(placeId, 'letter')).toBe(20);
      expect(store.telling.jobs.lastDueMs(placeId, 'look')).toBeUndefined();
      expect(store.telling.secret('pair', () => 'second')).toBe('first');
      store.telling.replaceSecret('pair', 'third');
      expect(store.telling.secret('pair', () => 'second')).toBe('third');
    });
  });
}
