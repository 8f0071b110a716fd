/** From warnings to messages, with channels that are played and a clock that is set by hand. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Target } from '../../services/store/store.ts';
import { askForLetter, ChannelFault, type Channels, deliver } from '../../services/warnings/delivery.ts';
import type { Message } from '../../services/warnings/message.ts';
import { dayMs, hourMs, openHouse, placeId, wednesdayMs } from './house.ts';

let house: ReturnType<typeof openHouse>;
let sent: { to: string; message: Message }[];
/** What a channel does instead of taking a message, by receiver. */
let faults: Map<string, ChannelFault>;
const channels: Channels = {
  async send(_place, { to }, message) {
    const fault = faults.get(to);
    if (fault) throw fault;
    sent.push({ to, message });
  },
};
const ada: Target = { channel: 'mail', to: 'ada@example.org' };

beforeEach(() => {
  house = openHouse();
  sent = [];
  faults = new Map();
  house.count('2026-05-13');
  house.store.telling.keepSettings(placeId, { mailTo: [ada.to], quietFromHour: 21, quietToHour: 7 });
});
afterEach(() => house.store.close());

/** What the service does each minute: looks, then sends. Answers the subjects that left now. */
async function minute(nowMs: number): Promise<string[]> {
  const before = sent.length;
  await house.open(nowMs);
  await deliver(house.store, placeId, channels, nowMs);
  return sent.slice(before).map(({ message }) => message.subject);
}
const outbox = () => house.store.telling.outbox;

describe('a warning', () => {
  it('is told once, however often it is looked at', async () => {
    house.toOrder(wednesdayMs);
    expect(await minute(wednesdayMs)).toEqual([
      'Order by Mon 18 May. Order 2 cards of Encarsia by Mon 18 May.',
    ]);
    for (let n = 1; n <= 72; n++) expect(await minute(wednesdayMs + n * hourMs)).toEqual([]);
  });

  it('shares the one message of its day; the next one waits for the next day', async () => {
    house.put(
      'release',
      {
        id: 'r1',
        enemy: 'encarsia-formosa',
        form: 'pupae on cards',
        number: 100,
        time: '2026-04-20T18:00:00Z',
        aliveShare: 1,
      },
      'r1',
    );
    house.toOrder(wednesdayMs);
    expect(await minute(wednesdayMs)).toEqual(['2 things for The pear yard house']);
    expect(sent[0]?.message.items).toHaveLength(2);
    house.put('sensor', { id: 'bench', name: 'Bench sensor', unit: 'Cel' }, 'bench');
    await house.store.readings.add(placeId, [
      { sensorId: 'bench', timeMs: wednesdayMs - dayMs, temperatureC: 19 },
    ]);
    for (const hours of [1, 5, 9]) expect(await minute(wednesdayMs + hours * hourMs)).toEqual([]);
    // 07:00 in London on the next day.
    expect(await minute(Date.parse('2026-05-14T05:59:00Z'))).toEqual([]);
    expect(await minute(Date.parse('2026-05-14T06:00:00Z'))).toEqual([
      'Bench sensor has been silent since Tue 12 May: look at its battery.',
    ]);
  });

  it('that is withdrawn is told as no longer true to whoever heard it, and why', async () => {
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    house.issue(wednesdayMs + hourMs);
    expect(await minute(wednesdayMs + hourMs)).toEqual([]);
    expect(await minute(wednesdayMs + dayMs)).toEqual([
      'No longer true: order by Mon 18 May. Order 2 cards of Encarsia by Mon 18 May.',
    ]);
    expect(sent[1]?.message.items[0]?.notes).toEqual([
      'No order is needed now. Leave it: Encarsia is at work.',
    ]);
  });

  it('that ended before it was told is never told; one that was done needs no word', async () => {
    const night = Date.parse('2026-05-13T22:00:00Z');
    house.toOrder(night);
    expect(await minute(night)).toEqual([]);
    house.issue(night + hourMs);
    await minute(night + hourMs);
    expect(await minute(night + 12 * hourMs)).toEqual([]);
    house.toOrder(night + 13 * hourMs);
    expect(await minute(night + 13 * hourMs)).toHaveLength(1);
    house.order({ orderedAt: '2026-05-14T11:30:00Z' });
    house.issue(night + 14 * hourMs);
    for (const days of [1, 2]) expect(await minute(night + days * dayMs)).toEqual([]);
  });

  it('whose day moves is told with the new day, and that the old one no longer holds', async () => {
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    house.toOrder(wednesdayMs + dayMs, { orderBy: '2026-05-25' });
    await minute(wednesdayMs + dayMs);
    expect(sent[1]?.message.items.map(({ text, notes }) => [text, notes[0]])).toEqual([
      ['Order by Mon 25 May. Order 2 cards of Encarsia by Mon 18 May.', expect.any(String)],
      [
        'No longer true: order by Mon 18 May. Order 2 cards of Encarsia by Mon 18 May.',
        'The day moved to Mon 25 May.',
      ],
    ]);
  });

  it('to order within four days leaves at once, also on a day that had its message', async () => {
    house.order({ expectedOn: '2026-05-14' });
    house.issue(wednesdayMs);
    expect(await minute(wednesdayMs)).toHaveLength(1);
    house.toOrder(wednesdayMs + hourMs, { enemy: 'amblyseius-swirskii', orderBy: '2026-05-18' });
    // Five days are left until Monday noon.
    expect(await minute(wednesdayMs + hourMs)).toEqual([]);
    house.toOrder(wednesdayMs + 2 * hourMs, { enemy: 'amblyseius-swirskii', orderBy: '2026-05-17' });
    expect(await minute(wednesdayMs + 3 * hourMs)).toHaveLength(1);
  });

  it('put off is told again when it wakes', async () => {
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    const raised = house.one('order-by');
    if (!raised) throw new Error('nothing was raised');
    house.store.warnings.save({ ...raised, state: 'put-off', putOffUntilMs: wednesdayMs + 2 * dayMs });
    expect(await minute(wednesdayMs + dayMs)).toEqual([]);
    expect(await minute(wednesdayMs + 2 * dayMs)).toHaveLength(1);
  });

  it('is told to everybody, also to a phone that joined later', async () => {
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    phone();
    await minute(wednesdayMs + hourMs);
    expect(sent.map(({ to }) => to)).toEqual([ada.to, 'p1']);
  });
});

const phone = () =>
  house.store.telling.phones.save({
    placeId,
    id: 'p1',
    endpoint: 'https://push.example.org/1',
    p256dh: 'a',
    auth: 'b',
    name: 'kitchen phone',
    addedMs: 0,
  });

describe('a channel that does not take it', () => {
  const away = new ChannelFault('The mail server did not answer (ECONNREFUSED).');

  it('is tried again, later each time, and shown, until the message is through', async () => {
    house.toOrder(wednesdayMs);
    faults.set(ada.to, away);
    await minute(wednesdayMs);
    const [waiting] = outbox().waiting(placeId);
    expect(waiting).toMatchObject({
      attempts: 1,
      nextTryMs: wednesdayMs + 5 * 60_000,
      fault: 'The mail server did not answer (ECONNREFUSED).',
    });
    await minute(wednesdayMs + 4 * 60_000);
    expect(outbox().waiting(placeId)).toMatchObject([{ attempts: 1 }]);
    await minute(wednesdayMs + 5 * 60_000);
    expect(outbox().waiting(placeId)).toMatchObject([{ attempts: 2, nextTryMs: wednesdayMs + 15 * 60_000 }]);
    faults.clear();
    expect(await minute(wednesdayMs + 15 * 60_000)).toHaveLength(1);
    expect(outbox().waiting(placeId)).toEqual([]);
    expect(outbox().settled(placeId, 5)).toMatchObject([{ state: 'sent' }]);
  });

  it('loses nothing in three days: what came meanwhile goes in the same message', async () => {
    house.toOrder(wednesdayMs);
    faults.set(ada.to, away);
    for (let hours = 0; hours < 72; hours++) {
      if (hours === 30) house.order({ id: 'o2', enemy: 'amblyseius-swirskii', expectedOn: '2026-05-16' });
      await minute(wednesdayMs + hours * hourMs);
    }
    expect(sent).toEqual([]);
    faults.clear();
    await minute(wednesdayMs + 78 * hourMs);
    expect(sent.map(({ message }) => message.items.map(({ text }) => text))).toEqual([
      [
        'Order by Mon 18 May. Order 2 cards of Encarsia by Mon 18 May.',
        'A parcel is due Sat 16 May: hang the swirskii mites by Mon 18 May, in the leaves, out of the sun.',
      ],
    ]);
  });

  it('does not hold up another', async () => {
    phone();
    faults.set(ada.to, away);
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    expect(sent.map(({ to }) => to)).toEqual(['p1']);
  });

  it('of a phone that has left is taken away, and its messages with it', async () => {
    phone();
    faults.set('p1', new ChannelFault('This phone no longer takes messages.', { isGone: true }));
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    expect(house.store.telling.phones.list(placeId)).toEqual([]);
    expect(outbox().waiting(placeId)).toEqual([]);
    expect(sent.map(({ to }) => to)).toEqual([ada.to]);
  });

  it('whose address was taken out waits for nobody', async () => {
    faults.set(ada.to, away);
    house.toOrder(wednesdayMs);
    await minute(wednesdayMs);
    house.store.telling.keepSettings(placeId, { mailTo: [], quietFromHour: 21, quietToHour: 7 });
    await minute(wednesdayMs + hourMs);
    expect(outbox().settled(placeId, 5)).toMatchObject([{ state: 'dropped' }]);
  });
});

describe('the letter', () => {
  const sunday = Date.parse('2026-05-17T17:00:00Z');
  const withLetter = () => {
    const letter = { weekday: 7, hour: 18 };
    const hours = { quietFromHour: 21, quietToHour: 7 };
    house.store.telling.keepSettings(placeId, { mailTo: [ada.to], ...hours, letter });
  };

  it('names the day of the count, which then wants a message of its own only when it is overdue', async () => {
    withLetter();
    phone();
    house.issue(sunday - hourMs);
    askForLetter(house.store, placeId, '2026-05-17', sunday);
    await minute(sunday);
    const day = (n: number) => Date.parse('2026-05-20T09:00:00Z') + n * dayMs;
    const counts = () => sent.filter(({ message }) => message.subject.startsWith('Count the traps'));
    await minute(day(0));
    expect(counts().map(({ to }) => to)).toEqual(['p1']);
    await minute(day(1));
    expect(counts().map(({ to }) => to)).toEqual(['p1', ada.to]);
  });

  it('that did not get through has named nothing', async () => {
    withLetter();
    house.issue(sunday - hourMs);
    askForLetter(house.store, placeId, '2026-05-17', sunday);
    faults.set(ada.to, new ChannelFault('The mail server did not answer.'));
    await minute(sunday);
    await minute(Date.parse('2026-05-20T09:00:00Z'));
    const waiting = outbox().waiting(placeId);
    expect(waiting.map(({ event }) => event)).toEqual(['letter', 'raised']);
  });

  it('comes once, takes the day’s warnings with it, and is asked for once', async () => {
    withLetter();
    house.toOrder(sunday - 9 * hourMs, { orderBy: '2026-05-25' });
    expect(await minute(sunday - 9 * hourMs)).toEqual([]);
    askForLetter(house.store, placeId, '2026-05-17', sunday);
    askForLetter(house.store, placeId, '2026-05-17', sunday);
    expect(await minute(sunday)).toEqual(['The pear yard house, the week of Sun 17 May']);
    expect(sent[0]?.message.items).toHaveLength(1);
    expect(await minute(sunday + 60_000)).toEqual([]);
  });

  it('says the sentence, what is due, and that there was no count to hold the forecast against', async () => {
    house.issue(sunday - hourMs);
    askForLetter(house.store, placeId, '2026-05-17', sunday);
    await minute(sunday);
    expect(sent[0]?.message).toMatchObject({
      opening: ['Leave it: Encarsia is at work.'],
      parts: [
        { title: 'What is due', lines: ['Wed 20 May: Count the traps, look under ten leaves.'] },
        {
          title: 'How the forecast did',
          lines: ['There was no count in the last seven days to hold it against.'],
        },
      ],
    });
  });
});
