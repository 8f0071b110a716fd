import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
const place = '/api/places/lean-to';

beforeEach(async () => {
  house = await openHouse();
  await house.send('POST', '/api/places', aPlace);
  await house.send('POST', `${place}/traps`, { id: 'door', name: 'Door', hungAt: '2026-05-01T08:00:00Z' });
});
afterEach(() => house.close());

const aCount = { trapId: 'door', time: '2026-05-12T18:00:00Z', exposureDays: 7, counts: { whitefly: 3 } };

describe('records', () => {
  test('what is sent is what is read', async () => {
    const added = await house.send('POST', `${place}/trap-counts`, { id: 'week-19', ...aCount });
    expect(added.statusCode).toBe(201);
    const { records } = (await house.app.inject(`${place}/trap-counts`)).json();
    expect(records).toEqual([
      {
        id: 'week-19',
        version: 1,
        changedAt: '2026-05-13T06:10:00.000Z',
        deleted: false,
        mayUndo: true,
        data: { id: 'week-19', ...aCount, countedFraction: 1, card: 'new' },
      },
    ]);
  });

  test('the same entry sent again with its key is kept once', async () => {
    const first = await house.send('POST', `${place}/trap-counts`, aCount, 'from-the-phone');
    const again = await house.send('POST', `${place}/trap-counts`, aCount, 'from-the-phone');
    expect(again.json()).toEqual(first.json());
    expect((await house.app.inject(`${place}/trap-counts`)).json().records).toHaveLength(1);
  });

  // The IETF draft on the Idempotency-Key header (draft-ietf-httpapi-idempotency-key-header-06, section 2.7)
  // asks for 422 when a key comes back with another payload.
  test('a key that comes back with another entry is refused', async () => {
    await house.send('POST', `${place}/trap-counts`, aCount, 'k');
    const other = await house.send(
      'POST',
      `${place}/trap-counts`,
      { ...aCount, counts: { whitefly: 9 } },
      'k',
    );
    expect(other.statusCode).toBe(422);
    expect(other.json().code).toBe('idempotency-key-reused');
    const { records } = (await house.app.inject(`${place}/trap-counts`)).json();
    expect(records[0].data.counts).toEqual({ whitefly: 3 });
  });

  // JSON has a -0 (RFC 8259 §6), and JSON.stringify writes it as 0 (ECMA-262, SerializeJSONProperty).
  test('a count of -0 is a count of 0', async () => {
    const text = JSON.stringify(aCount).replace('"whitefly":3', '"whitefly":-0');
    const added = await house.send('POST', `${place}/trap-counts`, text);
    expect([added.statusCode, added.json().data?.counts]).toEqual([201, { whitefly: 0 }]);
  });

  test('a deletion sent again answers as the first time, whatever came after', async () => {
    await house.send('POST', `${place}/trap-counts`, { id: 'c', ...aCount });
    const first = await house.send('DELETE', `${place}/trap-counts/c`, undefined, 'delete');
    await house.send('POST', `${place}/trap-counts/c/undo`);
    const again = await house.send('DELETE', `${place}/trap-counts/c`, undefined, 'delete');
    expect(again.json()).toEqual(first.json());
    expect((await house.app.inject(`${place}/trap-counts`)).json().records).toHaveLength(1);
  });

  test('a body that is empty is none, also under the name of JSON', async () => {
    await house.send('POST', `${place}/trap-counts`, { id: 'c', ...aCount });
    const undone = await house.send('POST', `${place}/trap-counts/c/undo`, '');
    expect([undone.statusCode, undone.json().deleted]).toEqual([200, true]);
    const nothing = await house.send('POST', `${place}/trap-counts`, '');
    expect([nothing.statusCode, nothing.json().code]).toEqual([400, 'record-invalid']);
  });

  test('one key may serve two routes', async () => {
    const count = await house.send('POST', `${place}/trap-counts`, aCount, 'k');
    const sighting = { time: '2026-05-12T18:00:00Z', what: 'small wasp' };
    const seen = await house.send('POST', `${place}/sightings`, sighting, 'k');
    expect([count.statusCode, seen.statusCode]).toEqual([201, 201]);
  });

  test('a changed entry keeps its earlier version, and undo puts it back', async () => {
    await house.send('POST', `${place}/trap-counts`, { id: 'c', ...aCount });
    await house.send('PUT', `${place}/trap-counts/c`, { ...aCount, counts: { whitefly: 30 } });
    const undone = await house.send('POST', `${place}/trap-counts/c/undo`, undefined, 'undo');
    expect(undone.json()).toMatchObject({ version: 3, data: { counts: { whitefly: 3 } } });
    const again = await house.send('POST', `${place}/trap-counts/c/undo`, undefined, 'undo');
    expect(again.json()).toEqual(undone.json());
    const { versions } = (await house.app.inject(`${place}/trap-counts/c/history`)).json();
    expect(versions.map((v: { data: typeof aCount }) => v.data.counts.whitefly)).toEqual([3, 30, 3]);
  });

  test('a deleted entry can be put back', async () => {
    await house.send('POST', `${place}/trap-counts`, { id: 'c', ...aCount });
    await house.send('DELETE', `${place}/trap-counts/c`);
    expect((await house.app.inject(`${place}/trap-counts`)).json().records).toEqual([]);
    const taken = async () => (await house.app.inject(`${place}/trap-counts/taken-back`)).json().records;
    expect(await taken()).toMatchObject([{ id: 'c', deleted: true, data: aCount }]);
    await house.send('POST', `${place}/trap-counts/c/undo`);
    expect(await taken()).toEqual([]);
    expect((await house.app.inject(`${place}/trap-counts`)).json().records).toHaveLength(1);
  });

  test('a deleted place can be put back with all that belongs to it', async () => {
    expect((await house.send('DELETE', place)).statusCode).toBe(200);
    expect((await house.app.inject(`${place}/traps`)).statusCode).toBe(404);
    expect((await house.send('POST', `${place}/undo`)).statusCode).toBe(200);
    expect((await house.app.inject(`${place}/traps`)).json().records).toHaveLength(1);
  });

  test('lowest and highest are named by their day', async () => {
    const typed = await house.send('POST', `${place}/daily-extremes`, {
      day: '2026-05-12',
      minC: 8,
      maxC: 31,
    });
    expect(typed.json()).toMatchObject({ id: '2026-05-12', data: { minC: 8, maxC: 31 } });
  });

  test('every change is told', async () => {
    house.told.length = 0;
    await house.send('POST', `${place}/trap-counts`, aCount);
    expect(house.told).toEqual([{ placeId: 'lean-to', what: 'record' }]);
  });

  test('a place sent again is the same place; another with its id is refused', async () => {
    expect((await house.send('POST', '/api/places', aPlace)).statusCode).toBe(201);
    const other = await house.send('POST', '/api/places', { ...aPlace, name: 'Other' });
    expect([other.statusCode, other.json().code]).toEqual([409, 'place-exists']);
    expect((await house.app.inject('/api/places')).json().places).toEqual([aPlace]);
  });
});
