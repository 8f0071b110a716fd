import { readFileSync } from 'node:fs';
import { get, type IncomingMessage } from 'node:http';
import { afterEach, expect, test } from 'vitest';
import { forecastAndAdvise, seasonSchema } from '../../services/model/index.ts';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
afterEach(() => house.close());

/** Reads a stream of server-sent events until `done` says it has seen enough. */
function readUntil(response: IncomingMessage, done: (text: string) => boolean): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    response.setEncoding('utf8');
    response.on('data', (part: string) => {
      text += part;
      if (done(text)) resolve(text);
    });
    response.on('error', reject);
    response.on('end', () => reject(new Error(`the stream ended after: ${text}`)));
  });
}

async function openEvents(headers: Record<string, string> = {}): Promise<IncomingMessage> {
  if (!house.app.server.listening) await house.app.listen({ port: 0, host: '127.0.0.1' });
  const address = house.app.server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  return new Promise((resolve, reject) => {
    get({ host: '127.0.0.1', port, path: '/api/events', headers }, resolve).on('error', reject);
  });
}

// WHATWG HTML, Server-sent events, sections 9.2.5 (text/event-stream) and 9.2.6 (fields, a blank line ends an event).
test('an open page hears of a change', async () => {
  house = await openHouse();
  const response = await openEvents();
  expect(response.headers['content-type']).toMatch(/^text\/event-stream/);
  const heard = readUntil(response, (text) => text.includes('event: change') && text.endsWith('\n\n'));
  await house.send('POST', '/api/places', aPlace);
  const [, , event = '', data = ''] = (await heard).split('\n');
  expect(event).toBe('event: change');
  expect(JSON.parse(data.replace(/^data: /, ''))).toEqual({ placeId: 'lean-to', what: 'record' });
});

test('a page that opens the stream is told when the last forecast of each place was issued', async () => {
  house = await openHouse();
  const text = readFileSync(new URL('../fixtures/small-season.json', import.meta.url), 'utf8');
  const season = seasonSchema.parse(JSON.parse(text));
  await house.send('POST', '/api/season', season);
  const asOfMs = Date.parse('2026-05-24T09:00:00Z');
  const outcome = forecastAndAdvise(season, new Date(asOfMs).toISOString(), { members: 20 });
  house.store.issued.keep({ placeId: season.place.id, asOfMs, ...outcome });
  const heard = await readUntil(await openEvents(), (all) => all.includes('event: issued'));
  const { issuedAt } = (await house.app.inject(`/api/places/${season.place.id}/outcome`)).json();
  expect(heard).toContain(
    `event: issued\ndata: ${JSON.stringify({ placeId: season.place.id, issuedAt })}\n\n`,
  );
});

test('asked only for its head, the stream is not opened', async () => {
  house = await openHouse();
  const answer = await house.app.inject({ method: 'HEAD', url: '/api/events' });
  expect(answer.statusCode).toBe(404);
});

test('closing the service ends open streams', async () => {
  house = await openHouse();
  const response = await openEvents();
  const ended = new Promise((resolve) => response.on('close', resolve));
  response.resume();
  await house.app.close();
  await ended;
  expect(response.complete).toBe(true);
});

test('a page whose session is taken away hears nothing more', async () => {
  house = await openHouse();
  const { secret, credential } = await house.access.choosePassphrase({
    passphrase: 'copper kettle under snow',
    name: 'phone',
  });
  const response = await openEvents({ cookie: `glasstide=${secret}` });
  expect(response.statusCode).toBe(200);
  const ended = new Promise((resolve) => response.on('end', resolve));
  response.resume();
  house.access.revoke(credential.id);
  await ended;
});

test('a page that does not fetch what it is told is let go, and the others hear on', async () => {
  house = await openHouse();
  const [slow, quick] = [await openEvents(), await openEvents()];
  slow.pause();
  let heard = 0;
  let whenHeard = () => {};
  quick.on('data', (part: Buffer) => {
    // One closing brace an event.
    heard += part.filter((byte) => byte === 0x7d).length;
    whenHeard();
  });
  const cut = new Promise((resolve) => slow.once('close', resolve));
  const placeId = 'x'.repeat(50_000);
  for (let told = 1; told <= 400; told += 1) {
    const all = new Promise<void>((resolve) => {
      whenHeard = () => heard === told && resolve();
    });
    house.changes.tell({ placeId, what: 'reading' });
    await all;
  }
  slow.resume();
  await cut;
  expect(slow.complete).toBe(false);
});
