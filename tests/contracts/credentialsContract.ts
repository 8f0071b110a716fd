/** What every whole store keeps to about who may come in, and about answers given once. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Credential, Store } from '../../services/store/store.ts';
import type { StoreSubject } from './storeContract.ts';

const phone: Credential = { id: 'a', kind: 'session', name: 'Phone', role: 'owner', createdMs: 5 };
const board: Credential = {
  id: 'b',
  kind: 'device',
  name: 'Bench',
  placeId: 'lean-to',
  sensorId: 'bench',
  createdMs: 4,
  expiresMs: 900,
};

export function credentialsContract(name: string, open: () => Promise<StoreSubject>): void {
  describe(`who may come in, ${name}`, () => {
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

    describe('credentials', () => {
      it('have no passphrase at first, then the last one kept', async () => {
        expect(store.credentials.passphraseHash()).toBeUndefined();
        store.credentials.keepPassphraseHash('one', 1);
        store.credentials.keepPassphraseHash('two', 2);
        await reopen();
        expect(store.credentials.passphraseHash()).toBe('two');
      });

      it('are found by the hash of their secret, and only by that', async () => {
        store.credentials.add(phone, 'hash of phone');
        store.credentials.add(board, 'hash of board');
        await reopen();
        expect(store.credentials.bySecretHash('hash of board')).toEqual(board);
        expect(store.credentials.bySecretHash('hash of nobody')).toBeUndefined();
        expect(store.credentials.list()).toEqual([board, phone]);
      });

      it('are not listed with their hash', () => {
        store.credentials.add(phone, 'hash of phone');
        expect(JSON.stringify(store.credentials.list())).not.toContain('hash of phone');
      });

      it('refuse one secret for two', () => {
        store.credentials.add(phone, 'same');
        expect(() => store.credentials.add(board, 'same')).toThrow(/UNIQUE/);
      });

      it('remember when they were used, and are taken away once', () => {
        store.credentials.add(phone, 'hash');
        store.credentials.markUsed('a', 77);
        expect(store.credentials.bySecretHash('hash')).toEqual({ ...phone, lastUsedMs: 77 });
        expect(store.credentials.remove('a')).toBe(true);
        expect(store.credentials.remove('a')).toBe(false);
        expect(store.credentials.bySecretHash('hash')).toBeUndefined();
      });

      it('hold one calendar token a place', () => {
        const { credentials } = store;
        credentials.keepCalendarToken('lean-to', 'first');
        credentials.keepCalendarToken('lean-to', 'second');
        expect(credentials.calendarToken('lean-to')).toBe('second');
        expect(credentials.placeOfCalendarToken('first')).toBeUndefined();
        expect(credentials.placeOfCalendarToken('second')).toBe('lean-to');
      });
    });

    describe('answers given once', () => {
      it('are the first ones, until they are a month old', async () => {
        store.answered.keep('k', { request: 'r', answer: 'one', atMs: 0 });
        store.answered.keep('k', { request: 'r', answer: 'two', atMs: 1 });
        await reopen();
        expect(store.answered.get('k')).toEqual({ request: 'r', answer: 'one' });
        store.answered.keep('later', { request: 'r', answer: 'x', atMs: 31 * 86_400_000 });
        expect(store.answered.get('k')).toBeUndefined();
      });
    });
  });
}
