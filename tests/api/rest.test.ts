import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterEach, describe, expect, test } from 'vitest';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
afterEach(() => house.close());

describe('health', () => {
  test('well', async () => {
    house = await openHouse();
    expect((await house.app.inject('/api/health')).json()).toEqual({
      status: 'well',
      reasons: [],
      now: '2026-05-13T06:10:00.000Z',
      demo: false,
      version: '0.0.0',
    });
  });

  test('unwell, with the reason', async () => {
    house = await openHouse({ troubles: () => ['The broker does not answer.'] });
    expect((await house.app.inject('/api/health')).json()).toMatchObject({
      status: 'unwell',
      reasons: ['The broker does not answer.'],
    });
  });
});

describe('quarantine', () => {
  const message = {
    placeId: 'lean-to',
    topic: 'glasstide/lean-to/readings/bench',
    payload: new TextEncoder().encode('{"temperatureC": nan}'),
    payloadBytes: 21,
    retained: false,
    arrivedMs: Date.parse('2026-05-13T06:00:00Z'),
    code: 'value-missing',
    reason: 'The temperature came as nan.',
  };

  test('is listed with what to do, and dismissed', async () => {
    house = await openHouse();
    const { id } = await house.store.quarantine.add(message);
    const { messages } = (await house.app.inject('/api/quarantine?place=lean-to')).json();
    expect(messages).toEqual([
      {
        id,
        placeId: 'lean-to',
        topic: message.topic,
        payload: '{"temperatureC": nan}',
        payloadBytes: 21,
        retained: false,
        arrivedAt: '2026-05-13T06:00:00.000Z',
        code: 'value-missing',
        reason: 'The temperature came as nan.',
        whatToDo: expect.stringContaining('temperature'),
      },
    ]);
    expect((await house.send('POST', `/api/quarantine/${id}/dismiss`)).json().settled).toBe('dismissed');
    expect((await house.app.inject('/api/quarantine')).json().messages).toEqual([]);
    expect((await house.send('POST', '/api/quarantine/999/dismiss')).json().code).toBe('record-unknown');
  });

  test('is shown, too, when this machine started without a clock: it is 1970 then', async () => {
    house = await openHouse();
    house.clock.ms = 5000;
    await house.store.quarantine.add({ ...message, arrivedMs: 5000 });
    await house.send('POST', '/api/places', aPlace);
    for (const path of ['/quarantine', '/health', '/places/lean-to/history']) {
      const answer = await house.app.inject(`/api${path}`);
      expect([path, answer.statusCode]).toEqual([path, 200]);
      expect(answer.body).toContain('1970-01-01T00:00:05.000Z');
    }
  });

  test('is read again with another unit', async () => {
    const asked: unknown[] = [];
    const reread = async (...args: unknown[]) => {
      asked.push(args);
      return { mended: 2, stillRefused: 1 };
    };
    house = await openHouse({ reread });
    const answer = await house.send('POST', '/api/quarantine/reread', { ids: [4, 5, 6], unit: 'Far' });
    expect(answer.json()).toEqual({ mended: 2, stillRefused: 1 });
    expect(asked).toEqual([[[4, 5, 6], 'Far']]);
  });
});

describe('warnings', () => {
  test('are put off, closed, and told', async () => {
    house = await openHouse();
    await house.send('POST', '/api/places', aPlace);
    house.store.warnings.save({
      id: 'order-by',
      placeId: 'lean-to',
      rule: 'order-by',
      raisedAtMs: house.clock.ms,
      deadlineMs: Date.parse('2026-05-18T22:00:00Z'),
      text: 'Order by Mon 18 May.',
      reason: 'Whitefly will probably (8 of 10) pass your limit.',
      ends: 'When the order is entered.',
      state: 'open',
    });
    const url = '/api/places/lean-to/warnings';
    const putOff = await house.send('POST', `${url}/order-by/put-off`, { days: 2 });
    expect(putOff.json()).toMatchObject({ state: 'put-off', putOffUntil: '2026-05-15T06:10:00.000Z' });
    expect((await house.send('POST', `${url}/order-by/put-off`, { days: 0 })).statusCode).toBe(400);
    await house.send('POST', `${url}/order-by/close`);
    expect((await house.app.inject(url)).json().warnings).toMatchObject([
      { id: 'order-by', state: 'closed' },
    ]);
    expect(house.told.filter(({ what }) => what === 'warning')).toHaveLength(2);
  });
});

describe('outcome', () => {
  test('before the first one, the answer says so', async () => {
    house = await openHouse();
    await house.send('POST', '/api/places', aPlace);
    const answer = await house.app.inject('/api/places/lean-to/outcome');
    expect([answer.statusCode, answer.json()]).toEqual([200, null]);
    expect((await house.app.inject('/api/places/lean-to/issued')).json()).toEqual({ issued: [] });
  });
});

describe('the dashboard', () => {
  test('its one page answers for every page address, never for the API', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dashboard-'));
    writeFileSync(join(folder, 'index.html'), '<title>glasstide</title>');
    house = await openHouse({ dashboardDir: folder });
    const browser = { accept: 'text/html,*/*' };
    for (const url of ['/', '/sensors', '/places/lean-to/round']) {
      const page = await house.app.inject({ url, headers: browser });
      expect([page.statusCode, page.body]).toEqual([200, '<title>glasstide</title>']);
    }
    expect((await house.app.inject({ url: '/api/none', headers: browser })).json().code).toBe(
      'route-unknown',
    );
    expect((await house.app.inject({ url: '/none.js' })).json().code).toBe('route-unknown');
    rmSync(folder, { recursive: true });
  });

  // RFC 9110 §8.4.1.3 (gzip) and §12.5.3 (what a browser accepts).
  test('a file with a compressed copy goes out compressed to whoever takes it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dashboard-'));
    writeFileSync(join(folder, 'a.js'), 'let wide = 1;');
    writeFileSync(join(folder, 'a.js.gz'), gzipSync('let wide = 1;'));
    house = await openHouse({ dashboardDir: folder });
    const packed = await house.app.inject({ url: '/a.js', headers: { 'accept-encoding': 'gzip' } });
    expect(packed.headers).toMatchObject({ 'content-encoding': 'gzip' });
    expect(packed.headers['content-type']).toContain('javascript');
    expect(gunzipSync(packed.rawPayload).toString()).toBe('let wide = 1;');
    const plain = await house.app.inject({ url: '/a.js' });
    expect([plain.headers['content-encoding'], plain.body]).toEqual([undefined, 'let wide = 1;']);
    rmSync(folder, { recursive: true });
  });

  test('long answers too, short ones go as they are', async () => {
    house = await openHouse();
    const asked = (url: string) => house.app.inject({ url, headers: { 'accept-encoding': 'br, gzip' } });
    const [plain, packed] = [await house.app.inject('/api/openapi.json'), await asked('/api/openapi.json')];
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(packed.headers).toMatchObject({
      'content-encoding': 'gzip',
      vary: expect.stringMatching('accept-encoding'),
    });
    expect(gunzipSync(packed.rawPayload).toString()).toBe(plain.payload);
    expect((await asked('/api/health')).headers['content-encoding']).toBeUndefined();
  });

  // RFC 9110 §14.2: a server may ignore Range. The others can be no path of a file, or leave the folder.
  test('an address that can be no file is refused as unknown, and none leads out of the folder', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dashboard-'));
    writeFileSync(join(folder, 'a.js'), '1');
    house = await openHouse({ dashboardDir: folder });
    for (const url of [
      '/%00',
      '/%E0%A4%A',
      '/api/places/%E0%A4%A',
      '/..%5c..%5cx',
      '/..%2f..%2fetc/passwd',
    ]) {
      const answer = await house.app.inject({ url });
      expect([url, answer.statusCode, answer.json().code]).toEqual([url, 404, 'route-unknown']);
    }
    const beyond = await house.app.inject({ url: '/a.js', headers: { range: 'bytes=100-200' } });
    expect([beyond.statusCode, beyond.body]).toEqual([200, '1']);
    rmSync(folder, { recursive: true });
  });

  // Content Security Policy Level 3 (W3C): without 'unsafe-inline' and 'unsafe-eval' no foreign script runs.
  test('runs only its own scripts and does not force HTTPS on a house without it', async () => {
    house = await openHouse();
    const { headers } = await house.app.inject('/api/health');
    expect(headers['content-security-policy']).toContain("default-src 'self'");
    expect(headers['content-security-policy']).not.toMatch(/unsafe|upgrade-insecure-requests/);
    expect(headers['strict-transport-security']).toBeUndefined();
  });
});
