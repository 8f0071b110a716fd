import { beforeEach, describe, expect, test } from 'vitest';
import { type Access, calendarTokens, createAccess } from '../../services/access/door.ts';
import { oneAtATime } from '../../services/access/oneAtATime.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';

const passphrase = 'copper kettle under snow';
const dayMs = 86_400_000;
let store: Store;
let clock: { ms: number; nowMs(): number };
let access: Access;
let changes: number;

beforeEach(() => {
  store = openStore({ path: ':memory:' });
  clock = { ms: Date.parse('2026-05-13T06:10:00Z'), nowMs: () => clock.ms };
  changes = 0;
  access = createAccess({ credentials: store.credentials, clock });
  access.onChange(() => {
    changes += 1;
  });
  return () => store.close();
});

describe('an open house', () => {
  test('takes everybody for its owner, until it is locked', async () => {
    expect(access.isOpen()).toBe(true);
    expect(access.callerOf(undefined)).toEqual({ role: 'owner' });
    const { secret } = await access.choosePassphrase({ passphrase, name: 'first' });
    expect(access.isOpen()).toBe(false);
    expect(access.callerOf(undefined)).toEqual({ role: 'nobody' });
    expect(access.callerOf(secret).role).toBe('owner');
    expect(changes).toBe(1);
  });

  test('has no passphrase that could be typed', async () => {
    await expect(access.signIn('', 'phone')).rejects.toMatchObject({ refusal: { code: 'passphrase-wrong' } });
  });

  test('is locked once, by the first of two who try at the same moment', async () => {
    const both = await Promise.allSettled([
      access.choosePassphrase({ passphrase, name: 'first' }),
      access.choosePassphrase({ passphrase: 'another kettle under snow', name: 'second' }),
    ]);
    expect(both.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
    await access.signIn(passphrase, 'phone');
  });
});

describe('the passphrase', () => {
  beforeEach(async () => {
    await access.choosePassphrase({ passphrase, name: 'first' });
  });

  test('opens, and no other text does', async () => {
    const { secret } = await access.signIn(passphrase, 'phone');
    expect(access.callerOf(secret)).toMatchObject({ role: 'owner', credential: { name: 'phone' } });
    for (const wrong of ['', 'copper', passphrase.toUpperCase()]) {
      await expect(access.signIn(wrong, 'x')).rejects.toMatchObject({
        refusal: { code: 'passphrase-wrong' },
      });
    }
  });

  test('is changed only by whoever knows it, and then every owner signs in anew', async () => {
    const { secret } = await access.signIn(passphrase, 'phone');
    const helper = access.accept(access.invite('Ada').secret);
    const next = 'a quite other sentence';
    await expect(access.choosePassphrase({ passphrase: next, name: 'x' })).rejects.toMatchObject({
      refusal: { code: 'passphrase-wrong' },
    });
    await expect(
      access.choosePassphrase({ passphrase: 'short', before: passphrase, name: 'x' }),
    ).rejects.toMatchObject({
      refusal: { code: 'record-invalid', issues: [{ path: 'passphrase', received: '5 characters' }] },
    });
    const mine = await access.choosePassphrase({ passphrase: next, before: passphrase, name: 'x' });
    expect(access.callerOf(secret).role).toBe('nobody');
    expect(access.callerOf(mine.secret).role).toBe('owner');
    expect(access.callerOf(helper.secret).role).toBe('helper');
    await access.signIn(next, 'x');
    await expect(access.signIn(passphrase, 'x')).rejects.toThrow();
  });

  test('never leaves the room', async () => {
    await access.signIn(passphrase, 'phone');
    expect(JSON.stringify(access.list())).not.toMatch(/copper|scrypt/);
  });
});

describe('sessions', () => {
  beforeEach(async () => {
    await access.choosePassphrase({ passphrase, name: 'first' });
  });

  test('last as long as they are used, and end after 90 days in a drawer', async () => {
    const { secret } = await access.signIn(passphrase, 'phone');
    for (const days of [80, 80, 80]) {
      clock.ms += days * dayMs;
      expect(access.callerOf(secret).role).toBe('owner');
    }
    clock.ms += 90 * dayMs + 1;
    expect(access.callerOf(secret).role).toBe('nobody');
    expect(access.list()).toEqual([]);
  });

  test('end when they are taken away', async () => {
    const { secret, credential } = await access.signIn(passphrase, 'phone');
    expect(access.revoke(credential.id)).toBe(true);
    expect(access.callerOf(secret).role).toBe('nobody');
    expect(access.revoke(credential.id)).toBe(false);
  });

  test('are at most a thousand with boards and keys', () => {
    for (let made = access.list().length; made < 1000; made += 1) access.makeReader('x');
    expect(() => access.makeReader('x')).toThrow(/1000/);
  });
});

describe('an invitation', () => {
  beforeEach(async () => {
    await access.choosePassphrase({ passphrase, name: 'first' });
  });

  test('makes one helper and no second', () => {
    const { secret } = access.invite('Ada');
    expect(access.callerOf(secret).role).toBe('nobody');
    const helper = access.accept(secret);
    expect(access.callerOf(helper.secret)).toMatchObject({ role: 'helper', credential: { name: 'Ada' } });
    expect(() => access.accept(secret)).toThrow(/used already/);
  });

  test('runs out after seven days, or is taken back', () => {
    const late = access.invite('Late');
    clock.ms += 7 * dayMs;
    expect(() => access.accept(late.secret)).toThrow(/run out/);
    const back = access.invite('Back');
    access.revoke(back.credential.id);
    expect(() => access.accept(back.secret)).toThrow(/taken back/);
  });

  test.each(['', 'x', '__proto__'])('is not "%s"', (text) => {
    expect(() => access.accept(text)).toThrow();
  });

  test('is nothing a session, a board or a key could pass for', async () => {
    const others = [
      await access.signIn(passphrase, 'x'),
      access.makeReader('x'),
      access.makeDevice('x', { placeId: 'p' }),
    ];
    for (const { secret } of others) expect(() => access.accept(secret)).toThrow();
  });
});

describe('boards and keys', () => {
  beforeEach(async () => {
    await access.choosePassphrase({ passphrase, name: 'first' });
  });

  test('a board signs in with its own name and password', () => {
    const device = { placeId: 'lean-to', sensorId: 'bench' };
    const { secret } = access.makeDevice('Bench', device);
    expect(access.deviceOf('lean-to/bench', secret)).toMatchObject(device);
    expect(access.deviceOf('lean-to/door', secret)).toBeUndefined();
    expect(access.deviceOf('lean-to/bench', `${secret}x`)).toBeUndefined();
    expect(access.callerOf(secret).role).toBe('nobody');
  });

  test('a key reads, and is no board', () => {
    const { secret } = access.makeReader('watcher');
    expect(access.callerOf(secret).role).toBe('reader');
    expect(access.deviceOf('', secret)).toBeUndefined();
  });
});

describe('the calendar token', () => {
  test('stays until it is renewed, then opens nothing', () => {
    const tokens = calendarTokens(store.credentials);
    const first = tokens.tokenOf('lean-to');
    expect(tokens.tokenOf('lean-to')).toBe(first);
    expect(tokens.placeOf(first)).toBe('lean-to');
    expect(tokens.tokenOf('orchard')).not.toBe(first);
    const second = tokens.renew('lean-to');
    expect(tokens.placeOf(first)).toBeUndefined();
    expect(tokens.placeOf(second)).toBe('lean-to');
  });
});

describe('slow work', () => {
  test('is done one after the other, and refused when eight wait', async () => {
    const alone = oneAtATime();
    let running = 0;
    let most = 0;
    let letGo = () => {};
    const gate = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const work = async () => {
      running += 1;
      most = Math.max(most, running);
      await gate;
      running -= 1;
    };
    const all = Array.from({ length: 9 }, () => alone(work));
    await expect(all[8]).rejects.toMatchObject({ refusal: { code: 'too-many-requests' } });
    letGo();
    await Promise.all(all.slice(0, 8));
    expect(most).toBe(1);
    await alone(async () => {});
  });

  test('that was refused or broke holds up nobody', async () => {
    const alone = oneAtATime();
    await expect(alone(() => Promise.reject(new Error('broken')))).rejects.toThrow('broken');
    expect(await alone(async () => 7)).toBe(7);
  });
});
