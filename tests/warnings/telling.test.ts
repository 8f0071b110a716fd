/** The whole telling with a clock that is set by hand, a real mail server and a played push service. */
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createTelling } from '../../services/warnings/telling.ts';
import { newSubscription, open, startPushService } from '../channels/pushService.ts';
import { dayMs, hourMs, openHouse, placeId } from './house.ts';

const at = (iso: string) => Date.parse(iso);
const closers: (() => unknown)[] = [];
let house: ReturnType<typeof openHouse>;
let receivers: string[];
let mornings: string[];
let changed: number;
const clock = { ms: 0, nowMs: () => clock.ms };

beforeEach(() => {
  house = openHouse();
  house.count('2026-05-13');
  receivers = [];
  mornings = [];
  changed = 0;
  clock.ms = at('2026-05-13T09:00:00Z');
});
afterEach(async () => {
  for (const close of closers.splice(0).reverse()) await close();
  await house.store.close();
});

async function mailServer(): Promise<string> {
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, { envelope }, callback) {
      stream.on('end', () => {
        receivers.push(...envelope.rcptTo.map(({ address }) => address));
        callback();
      });
      stream.resume();
    },
  });
  server.listen(0, '127.0.0.1');
  await once(server.server, 'listening');
  closers.push(() => new Promise((resolve) => server.close(() => resolve(undefined))));
  return `smtp://127.0.0.1:${(server.server.address() as AddressInfo).port}`;
}

function start(url?: string) {
  const telling = createTelling({
    store: house.store,
    clock,
    ...(url !== undefined && { mail: { url, from: 'glasshouse@example.org' } }),
    onMorning: () => mornings.push(new Date(clock.ms).toISOString()),
    onWarnings: () => {
      changed++;
    },
  });
  closers.push(() => telling.close());
  return telling;
}
const settings = (mailTo: string[], letter?: { weekday: number; hour: number }) =>
  house.store.telling.keepSettings(placeId, {
    mailTo,
    quietFromHour: 21,
    quietToHour: 7,
    ...(letter && { letter }),
  });

describe('the telling', () => {
  it('raises and mails a warning with the minute, and says once that warnings changed', async () => {
    const telling = start(await mailServer());
    settings(['ada@example.org', 'bo@example.org']);
    house.toOrder(clock.ms);
    for (let minute = 0; minute < 20; minute++) {
      await telling.tick();
      clock.ms += 60_000;
    }
    expect(receivers).toEqual(['ada@example.org', 'bo@example.org']);
    expect(changed).toBe(1);
  });

  it('does not send twice when two minutes come at once', async () => {
    const telling = start(await mailServer());
    settings(['ada@example.org']);
    house.toOrder(clock.ms);
    await Promise.all([telling.tick(), telling.tick(), telling.tick()]);
    expect(receivers).toEqual(['ada@example.org']);
  });

  it('asks for the forecast each morning at five, also late, once', async () => {
    const telling = start();
    for (; clock.ms < at('2026-05-14T12:00:00Z'); clock.ms += hourMs) await telling.tick();
    clock.ms = at('2026-05-17T11:20:00Z');
    await telling.tick();
    await telling.tick();
    expect(mornings).toEqual(['2026-05-14T04:00:00.000Z', '2026-05-17T11:20:00.000Z']);
  });

  it('sends the letter on its evening; one missed in the dark comes once when the light is back', async () => {
    const url = await mailServer();
    let telling = start(url);
    settings(['ada@example.org'], { weekday: 7, hour: 18 });
    house.issue(clock.ms);
    await telling.tick();
    clock.ms = at('2026-05-17T17:00:00Z');
    await telling.tick();
    expect(receivers).toHaveLength(1);
    // The power is away for two Sundays; another process starts on the same store.
    await telling.close();
    clock.ms = at('2026-06-02T10:00:00Z');
    telling = start(url);
    for (let n = 0; n < 5; n++) {
      await telling.tick();
      clock.ms += hourMs;
    }
    expect(receivers).toHaveLength(2);
  });

  it('a letter moved to another day is not one that was missed', async () => {
    const telling = start(await mailServer());
    settings(['ada@example.org'], { weekday: 7, hour: 18 });
    await telling.tick();
    settings(['ada@example.org'], { weekday: 2, hour: 18 });
    await telling.tick();
    clock.ms += dayMs;
    await telling.tick();
    expect(receivers).toEqual([]);
    clock.ms = at('2026-05-19T17:00:00Z');
    await telling.tick();
    expect(receivers).toEqual(['ada@example.org']);
  });

  it('keeps a warning over a mail server that is away and a restart, and names the trouble', async () => {
    settings(['ada@example.org']);
    house.toOrder(clock.ms);
    const alone = start();
    for (let n = 0; n < 4; n++) {
      await alone.tick();
      clock.ms += 45 * 60_000;
    }
    expect(alone.troubles()).toEqual([
      'A message about The pear yard house to ada@example.org waits. No mail server is set: whoever runs glasstide names one. It is tried again.',
    ]);
    await alone.close();
    const telling = start(await mailServer());
    await telling.tick();
    expect(receivers).toEqual(['ada@example.org']);
    expect(telling.troubles()).toEqual([]);
  });

  it('can be tried by each channel at any hour, and says what is wrong', async () => {
    const telling = start(await mailServer());
    const service = await startPushService();
    closers.push(service.close);
    const browser = newSubscription();
    house.store.telling.phones.save({
      placeId,
      id: 'p1',
      endpoint: `${service.origin}/send`,
      p256dh: browser.p256dh,
      auth: browser.auth,
      name: 'kitchen phone',
      addedMs: 0,
    });
    clock.ms = at('2026-05-13T23:00:00Z');
    expect(await telling.tryOut(placeId, { channel: 'mail', to: 'ada@example.org' })).toBeUndefined();
    expect(await telling.tryOut(placeId, { channel: 'push', to: 'p1' })).toBeUndefined();
    expect(receivers).toEqual(['ada@example.org']);
    const notice = JSON.parse(open(service.received[0]?.body ?? Buffer.alloc(0), browser));
    expect(notice.title).toBe('A trial from The pear yard house');
    expect(await telling.tryOut(placeId, { channel: 'push', to: 'p2' })).toBe(
      'This phone is not known here.',
    );
    service.answer.status = 503;
    expect(await telling.tryOut(placeId, { channel: 'push', to: 'p1' })).toBe(
      'The push service would not take it (503).',
    );
  });

  it('signs with the same keys after a restart: browsers agreed to these', () => {
    expect(start().pushPublicKey).toBe(start().pushPublicKey);
  });
});
