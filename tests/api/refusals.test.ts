import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fieldName } from '../../services/issues.ts';
import { refusals } from '../../services/refusals.ts';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
const place = '/api/places/lean-to';
const aCount = {
  id: 'c',
  trapId: 'door',
  time: '2026-05-12T18:00:00Z',
  exposureDays: 7,
  counts: { whitefly: 3 },
};

beforeEach(async () => {
  house = await openHouse();
  await house.send('POST', '/api/places', aPlace);
  await house.send('POST', `${place}/traps`, { id: 'door', name: 'Door', hungAt: '2026-05-01T08:00:00Z' });
});
afterEach(() => house.close());

async function nothingWasKept() {
  expect((await house.app.inject(`${place}/trap-counts`)).json().records).toEqual([]);
}

describe('a trap count is refused with the field, what came and what to send', () => {
  test.each([
    ['a negative count', { counts: { whitefly: -3 } }, 'counts.whitefly', '-3', 'send 0 or more'],
    ['a broken insect', { counts: { whitefly: 2.5 } }, 'counts.whitefly', '2.5', 'whole number of insects'],
    ['a count as text', { counts: { whitefly: 'NaN' } }, 'counts.whitefly', '"NaN"', 'a number is needed'],
    [
      'a count that is null',
      { counts: { whitefly: null } },
      'counts.whitefly',
      'empty',
      'a number is needed',
    ],
    ['a kind nobody knows', { counts: { bees: 1 } }, 'counts.bees', '1', 'not known here'],
    ['fraction 0', { countedFraction: 0 }, 'countedFraction', '0', 'send a share above 0'],
    ['fraction above 1', { countedFraction: 1.2 }, 'countedFraction', '1.2', 'send a share of at most 1'],
    ['no days', { exposureDays: 0 }, 'exposureDays', '0', 'send days above 0'],
    [
      'a clock from 1970',
      { time: '1970-01-01T00:03:00Z' },
      'time',
      '"1970-01-01T00:03:00Z"',
      'after the year 2000',
    ],
    ['a time without offset', { time: '2026-05-12 18:00' }, 'time', '"2026-05-12 18:00"', 'with its offset'],
    [
      'an upside-down band',
      { counts: { whitefly: { low: 9, high: 2 } } },
      'counts.whitefly',
      '{"low":9,"high":2}',
      'low must not exceed high',
    ],
    ['a field nobody knows', { colour: 'yellow' }, 'colour', '"yellow"', 'leave this field out'],
    ['a missing field', { exposureDays: undefined }, 'exposureDays', 'nothing', 'a number is needed'],
    ['a lost trap with a count', { card: 'lost' }, 'counts', '{"whitefly":3}', 'leave them out'],
  ])('%s', async (_, wrong, path, received, expected) => {
    const answer = await house.send('POST', `${place}/trap-counts`, { ...aCount, ...wrong });
    expect(answer.statusCode).toBe(400);
    const { code, reason, whatToDo, issues } = answer.json();
    expect({ code, whatToDo }).toEqual({
      code: 'record-invalid',
      whatToDo: refusals['record-invalid'].whatToDo,
    });
    expect(issues).toContainEqual({ path, received, expected: expect.stringContaining(expected) });
    expect(reason).toContain(fieldName(path));
    expect(reason).toContain(expected);
    await nothingWasKept();
  });

  test('NaN, which JSON does not have', async () => {
    const answer = await house.send('POST', `${place}/trap-counts`, '{"trapId":"door","exposureDays":NaN}');
    expect([answer.statusCode, answer.json().code]).toEqual([400, 'payload-unreadable']);
    expect(answer.json().reason).toContain('NaN');
    await nothingWasKept();
  });

  // 1e999 overflows to Infinity in every IEEE 754 double parser (ECMA-262, JSON.parse).
  test('a number too large for a number', async () => {
    const text = JSON.stringify(aCount).replace('"exposureDays":7', '"exposureDays":1e999');
    const answer = await house.send('POST', `${place}/trap-counts`, text);
    expect(answer.json()).toMatchObject({
      code: 'record-invalid',
      issues: [{ path: 'exposureDays', received: 'Infinity' }],
    });
  });

  test('dated next year', async () => {
    const answer = await house.send('POST', `${place}/trap-counts`, {
      ...aCount,
      time: '2027-05-13T06:00:00Z',
    });
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'date-ahead']);
    expect(answer.json().issues).toMatchObject([{ path: 'time', received: '2027-05-13T06:00:00Z' }]);
  });

  test('dated before the trap was hung', async () => {
    const answer = await house.send('POST', `${place}/trap-counts`, {
      ...aCount,
      time: '2026-04-30T18:00:00Z',
    });
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'count-before-trap']);
    expect(answer.json().issues).toEqual([
      {
        path: 'time',
        expected: 'send a time at or after 2026-05-01T08:00:00Z',
        received: '2026-04-30T18:00:00Z',
      },
    ]);
    await nothingWasKept();
  });

  test('on a trap this place does not have', async () => {
    const answer = await house.send('POST', `${place}/trap-counts`, { ...aCount, trapId: 'window' });
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'reference-unknown']);
    expect(answer.json().issues[0]).toMatchObject({ path: 'trapId', received: 'window' });
    await nothingWasKept();
  });
});

describe('other refusals', () => {
  test('a leaf check of a planting this place does not have', async () => {
    const check = { time: '2026-05-12T18:00:00Z', leaves: 10, seen: [], plantingId: 'figs' };
    const answer = await house.send('POST', `${place}/leaf-checks`, check);
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'reference-unknown']);
  });

  test.each([
    ['traps', 'hungAt', '2062-05-13T06:10:00Z', { id: 'vent', name: 'Vent' }],
    ['orders', 'orderedAt', '2062-05-13T06:10:00Z', { enemy: 'encarsia-formosa', number: 50 }],
    ['daily-extremes', 'day', '2026-05-14', { minC: 8, maxC: 21 }],
    ['daily-extremes', 'day', '2062-05-13', { minC: 8, maxC: 21 }],
    ['releases', 'time', '2062-05-13T06:10:00Z', { enemy: 'encarsia-formosa', form: 'card', number: 50 }],
    ['treatments', 'time', '2062-05-13T06:10:00Z', { kind: 'soap' }],
  ])('%s with %s %s, which is still to come', async (noun, path, received, data) => {
    const answer = await house.send('POST', `${place}/${noun}`, { ...data, [path]: received });
    expect([answer.statusCode, answer.json().code]).toEqual([422, 'date-ahead']);
    expect(answer.json().issues).toMatchObject([{ path, received }]);
    const { records } = (await house.app.inject(`${place}/${noun}`)).json();
    expect(records.map(({ id }: { id: string }) => id)).toEqual(noun === 'traps' ? ['door'] : []);
  });

  // Kiritimati keeps UTC+14 (IANA tz, Pacific/Kiritimati): there it is already 14 May at 10:00 UTC on the 13th.
  test('the day that has begun somewhere may be entered', async () => {
    house.clock.ms = Date.parse('2026-05-13T10:00:00Z');
    const today = { day: '2026-05-14', minC: 8, maxC: 21 };
    expect((await house.send('POST', `${place}/daily-extremes`, today)).statusCode).toBe(201);
  });

  test.each([
    ['a lowest above the highest', { minC: 22, maxC: 21 }, 'minC'],
    ['1-wire without contact', { minC: -127, maxC: 21 }, 'minC'],
    ['1-wire after power-up', { minC: 8, maxC: 85 }, 'maxC'],
  ])('a day of %s', async (_, values, path) => {
    const answer = await house.send('POST', `${place}/daily-extremes`, { day: '2026-05-12', ...values });
    expect([answer.statusCode, answer.json().issues[0]?.path]).toEqual([400, path]);
    expect((await house.app.inject(`${place}/daily-extremes`)).json().records).toEqual([]);
  });

  test('a sensor in a unit nobody knows', async () => {
    const answer = await house.send('POST', `${place}/sensors`, { id: 'bench', name: 'Bench', unit: 'R' });
    expect(answer.json()).toMatchObject({
      code: 'record-invalid',
      issues: [{ path: 'unit', received: '"R"', expected: expect.stringContaining('Far') }],
    });
  });

  test('a count for a place nobody set up', async () => {
    const answer = await house.send('POST', '/api/places/orangery/trap-counts', aCount);
    expect([answer.statusCode, answer.json().code]).toEqual([404, 'record-unknown']);
  });

  test('more than 1 MB', async () => {
    const note = 'x'.repeat(1024 * 1024);
    const answer = await house.send('POST', `${place}/trap-counts`, { ...aCount, note });
    expect([answer.statusCode, answer.json().code]).toEqual([413, 'payload-too-large']);
    await nothingWasKept();
  });

  test('a write without a key, before its content is looked at', async () => {
    const answer = await house.app.inject({ method: 'POST', url: '/api/places', payload: { half: true } });
    expect([answer.statusCode, answer.json().code]).toEqual([400, 'idempotency-key-missing']);
  });

  test('an id in the data that is not the one in the path', async () => {
    await house.send('POST', `${place}/trap-counts`, aCount);
    const answer = await house.send('PUT', `${place}/trap-counts/c`, { ...aCount, id: 'd' });
    expect(answer.json()).toMatchObject({ code: 'record-invalid', issues: [{ path: 'id', received: 'd' }] });
  });

  test('a place nobody set up', async () => {
    const answer = await house.app.inject('/api/places/orangery/readings');
    expect([answer.statusCode, answer.json().code]).toEqual([404, 'record-unknown']);
    expect(answer.json().reason).toContain('orangery');
  });

  test('an entry nobody made cannot be changed, deleted or undone', async () => {
    const put = await house.send('PUT', `${place}/trap-counts/c`, aCount);
    const remove = await house.send('DELETE', `${place}/trap-counts/c`);
    const undo = await house.send('POST', `${place}/trap-counts/c/undo`);
    expect([put, remove, undo].map((answer) => answer.json().code)).toEqual(Array(3).fill('record-unknown'));
  });

  test('a window that ends before it begins', async () => {
    const answer = await house.app.inject(
      `${place}/readings?from=2026-05-12T00:00:00Z&to=2026-05-11T00:00:00Z`,
    );
    expect(answer.json()).toMatchObject({ code: 'record-invalid', issues: [{ path: 'from' }] });
  });

  test.each([
    ['localhost:8080', 200],
    ['127.0.0.1:8080', 200],
    ['[::1]:8080', 200],
    ['attacker.example', 421],
    ['localhost.attacker.example:8080', 421],
    ['127.0.0.1.attacker.example', 421],
  ])('a request for the name %s: %i', async (host, status) => {
    const answer = await house.app.inject({ url: '/api/places', headers: { host } });
    expect(answer.statusCode).toBe(status);
    if (status === 421) expect(answer.json().code).toBe('host-unknown');
  });

  test('an address that does not exist', async () => {
    const answer = await house.app.inject('/api/nothing-here');
    expect([answer.statusCode, answer.json().code]).toEqual([404, 'route-unknown']);
  });

  test('two aphids that cannot be told apart on a trap', async () => {
    const pests = ['myzus-persicae', 'aphis-gossypii'];
    const answer = await house.send('POST', '/api/places', { ...aPlace, id: 'shed', pests });
    expect(answer.json().issues).toEqual([
      { path: 'pests', expected: expect.stringContaining('one aphid'), received: JSON.stringify(pests) },
    ]);
  });

  test('a fault of ours is told without its inside', async () => {
    const answer = await house.send('POST', `${place}/outcome`);
    expect([answer.statusCode, answer.json().code]).toEqual([500, 'fault']);
    expect(answer.body).not.toContain('works out no forecast');
  });
});
