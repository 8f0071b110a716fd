import ICAL from 'ical.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { calendarFeed } from '../../services/warnings/channels/calendar.ts';
import { aPlace, openHouse } from './house.ts';

type House = Awaited<ReturnType<typeof openHouse>>;
let house: House;
const url = '/api/places/lean-to/telling';
const tried: unknown[] = [];

beforeEach(async () => {
  tried.length = 0;
  house = await openHouse({
    telling: {
      settings: (placeId) => house.store.telling.settings(placeId) ?? defaults,
      canMail: true,
      pushPublicKey: 'BPublic',
      tryOut: async (placeId, target) => {
        tried.push([placeId, target]);
        return target.channel === 'mail' ? undefined : 'The push service did not answer.';
      },
      tryMqtt: async () => false,
      feed: (placeId) =>
        placeId === 'lean-to' ? calendarFeed(aPlace, house.store.telling.calendar.list(placeId)) : undefined,
    },
  });
  await house.send('POST', '/api/places', aPlace);
});
afterEach(() => house.close());

const defaults = { mailTo: [], quietFromHour: 21, quietToHour: 7, letter: { weekday: 7, hour: 18 } };
const wanted = { mailTo: ['ada@example.org'], quietFromHour: 22, quietToHour: 6, letter: null };
const phone = {
  endpoint: 'https://push.example.org/send/abc',
  keys: {
    p256dh: 'BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4',
    auth: 'BTBZMqHH6r4Tts7J_aSIgg',
  },
  name: 'kitchen phone',
};

describe('how people are told', () => {
  test('is told, changed and told again; without a letter there is none', async () => {
    expect((await house.app.inject(url)).json()).toMatchObject({
      settings: defaults,
      canMail: true,
      pushPublicKey: 'BPublic',
      phones: [],
      targets: [],
    });
    const changed = await house.send('PUT', url, wanted);
    expect(changed.json()).toMatchObject({
      settings: wanted,
      targets: [{ channel: 'mail', to: 'ada@example.org', waiting: 0 }],
    });
    expect(house.store.telling.settings('lean-to')).toEqual({
      mailTo: ['ada@example.org'],
      quietFromHour: 22,
      quietToHour: 6,
    });
  });

  test.each([
    [{ ...wanted, mailTo: ['ada'] }, 'mailTo'],
    [{ ...wanted, quietFromHour: 24 }, 'quietFromHour'],
    [{ ...wanted, letter: { weekday: 8, hour: 18 } }, 'letter'],
  ])('refuses %j and changes nothing', async (body, path) => {
    const answer = await house.send('PUT', url, body);
    expect(answer.statusCode).toBe(400);
    expect(answer.json().issues[0].path).toContain(path);
    expect(house.store.telling.settings('lean-to')).toBeUndefined();
  });

  test('what waits is shown with what went wrong, and what was sent', async () => {
    await house.send('PUT', url, wanted);
    const entry = {
      placeId: 'lean-to',
      channel: 'mail',
      to: 'ada@example.org',
      event: 'raised',
      createdMs: 0,
    } as const;
    house.store.telling.outbox.add({ ...entry, about: 'count-due@5' });
    house.store.telling.outbox.add({ ...entry, about: 'order-by@5' });
    const [first, second] = house.store.telling.outbox.waiting('lean-to');
    house.store.telling.outbox.settle([first?.id ?? 0], 'sent', house.clock.ms);
    house.store.telling.outbox.postpone(
      [second?.id ?? 0],
      house.clock.ms + 300_000,
      'The mail server did not answer.',
    );
    expect((await house.app.inject(url)).json()).toMatchObject({
      targets: [
        {
          waiting: 1,
          lastSentAt: '2026-05-13T06:10:00.000Z',
          fault: 'The mail server did not answer.',
          nextTryAt: '2026-05-13T06:15:00.000Z',
        },
      ],
      settled: [{ event: 'raised', about: 'count-due', sent: true, at: '2026-05-13T06:10:00.000Z' }],
    });
  });
});

describe('a phone', () => {
  test('is added, tried and taken away; its keys are not told again', async () => {
    const added = await house.send('POST', `${url}/phones`, phone);
    expect(added.statusCode).toBe(200);
    const [{ id }] = added.json().phones;
    expect(added.json().phones).toEqual([{ id, name: 'kitchen phone', addedAt: '2026-05-13T06:10:00.000Z' }]);
    expect(added.body).not.toContain(phone.keys.auth);
    expect(added.body).not.toContain(phone.endpoint);
    const trial = await house.send('POST', `${url}/try`, { channel: 'push', to: id });
    expect(trial.json()).toEqual({ sent: false, fault: 'The push service did not answer.' });
    const gone = await house.send('DELETE', `${url}/phones/${id}`);
    expect(gone.json().phones).toEqual([]);
  });

  test.each([
    'http://push.example.org/send',
    'https://127.0.0.1/send',
    'https://[::1]/send',
    'https://2130706433/send',
    'https://localhost/send',
    'https://nas.local/send',
    'https://printer/send',
    'ftp://push.example.org/send',
  ])('at %s is no push service: messages must not reach into the house', async (endpoint) => {
    const answer = await house.send('POST', `${url}/phones`, { ...phone, endpoint });
    expect(answer.statusCode).toBe(400);
    expect(house.store.telling.phones.list('lean-to')).toEqual([]);
  });
});

describe('a trial', () => {
  test('goes only to somebody who is told here', async () => {
    await house.send('PUT', url, wanted);
    const trial = (body: object) => house.send('POST', `${url}/try`, body);
    expect((await trial({ channel: 'mail', to: 'ada@example.org' })).json()).toEqual({ sent: true });
    expect((await trial({ channel: 'mail', to: 'stranger@example.org' })).json()).toMatchObject({
      code: 'record-unknown',
    });
    expect((await trial({ channel: 'mqtt' })).json()).toEqual({
      sent: false,
      fault: 'The broker is away: it gets the newest when it is back.',
    });
    expect(tried).toEqual([['lean-to', { channel: 'mail', to: 'ada@example.org' }]]);
  });
});

describe('the calendar', () => {
  test('opens by its secret address alone, until that is renewed', async () => {
    await house.access.choosePassphrase({ passphrase: 'the pear tree by the wall', name: 'owner' });
    const { calendarTokens } = await import('../../services/access/door.ts');
    const tokens = calendarTokens(house.store.credentials);
    const token = tokens.tokenOf('lean-to');
    const get = (name: string) => house.app.inject(`/api/calendar/${name}`);
    const feed = await get(`${token}.ics`);
    expect(feed.statusCode).toBe(200);
    expect(feed.headers['content-type']).toBe('text/calendar; charset=utf-8');
    expect(new ICAL.Component(ICAL.parse(feed.body)).name).toBe('vcalendar');
    expect((await get(token)).statusCode).toBe(200);
    expect((await get('guess.ics')).statusCode).toBe(404);
    tokens.renew('lean-to');
    const old = await get(`${token}.ics`);
    expect(old.statusCode).toBe(404);
    expect(old.body).not.toContain(token);
  });

  test('and how people are told is nobody else’s business', async () => {
    await house.access.choosePassphrase({ passphrase: 'the pear tree by the wall', name: 'owner' });
    expect((await house.app.inject(url)).statusCode).toBe(401);
    const reader = house.access.makeReader('a display');
    const headers = { authorization: `Bearer ${reader.secret}` };
    expect((await house.app.inject({ url, headers })).statusCode).toBe(403);
  });
});
