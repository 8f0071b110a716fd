import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { aPlace, openHouse } from './house.ts';

const passphrase = 'copper kettle under snow';
type House = Awaited<ReturnType<typeof openHouse>>;
let house: House;
let keys = 0;

beforeEach(async () => {
  house = await openHouse();
  await house.send('POST', '/api/places', aPlace);
  await house.send('POST', '/api/places/lean-to/traps', {
    id: 'door',
    name: 'Door',
    hungAt: '2026-05-01T08:00:00Z',
  });
});
afterEach(() => house.close());

interface Asked {
  method?: 'GET' | 'POST' | 'PUT' | 'DELETE' | 'HEAD';
  body?: object;
  cookie?: string | undefined;
  headers?: Record<string, string>;
}
/** A request as a browser or a program sends it; by another name than localhost unless the headers say so. */
function ask(url: string, { method = 'GET', body, cookie, headers = {} }: Asked = {}) {
  return house.app.inject({
    method,
    url,
    headers: {
      host: 'glasshouse.example',
      'idempotency-key': `k${keys++}`,
      ...(body && { 'content-type': 'application/json' }),
      ...(cookie && { cookie }),
      ...headers,
    },
    ...(body && { payload: JSON.stringify(body) }),
  });
}
type Reply = Awaited<ReturnType<typeof ask>>;
const cookieOf = (reply: Reply): string => String(reply.headers['set-cookie']).split(';')[0] ?? '';
const codeOf = (reply: Reply): string => reply.json().code;

/** Locks the house and answers the owner's cookie. */
const lock = async () => cookieOf(await house.send('POST', '/api/access/passphrase', { passphrase }));
async function helperOf(owner: string): Promise<string> {
  const made = await ask('/api/access/credentials', {
    method: 'POST',
    cookie: owner,
    body: { kind: 'invite', name: 'Ada' },
  });
  const accepted = await ask('/api/access/accept', {
    method: 'POST',
    body: { invitation: made.json().secret },
  });
  return cookieOf(accepted);
}

describe('an open house', () => {
  test('is read and written without a word, on this machine', async () => {
    expect((await house.app.inject('/api/access')).json()).toEqual({ passphrase: false, you: 'owner' });
    expect((await house.app.inject('/api/places')).statusCode).toBe(200);
  });

  // RFC 7239 (Forwarded), RFC 9110 section 7.6.3 (Via), and what proxies send by custom.
  test.each(['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'])(
    'answers no proxy that sends %s, in whosever name it asks',
    async (name) => {
      const reply = await ask('/api/places', { headers: { host: 'localhost', [name]: 'x' } });
      expect(codeOf(reply)).toBe('host-unknown');
    },
  );

  test('answers no other name', async () => {
    const reply = await ask('/api/places');
    expect([reply.statusCode, codeOf(reply)]).toEqual([421, 'host-unknown']);
  });
});

describe('an outsider at a locked house', () => {
  test('reads and writes nothing, on any route, and learns nothing of what is there', async () => {
    await lock();
    const routes = Object.entries(house.app.swagger().paths as Record<string, object>);
    const open: string[] = [];
    let tried = 0;
    for (const [path, operations] of routes) {
      for (const method of Object.keys(operations)) {
        const url = path.replace('{place}', 'lean-to').replace(/\{\w+\}/g, 'door');
        for (const cookie of [undefined, 'glasstide=x', `glasstide=${'A'.repeat(32)}`]) {
          const reply = await house.app.inject({
            method: method.toUpperCase() as 'GET',
            url,
            // Each from an address of its own, so that the limit on strangers is not what turns them away.
            remoteAddress: `10.0.${tried >> 8}.${tried & 255}`,
            headers: { 'idempotency-key': 'x', ...(cookie && { cookie }) },
          });
          tried += 1;
          if (reply.statusCode === 401 && codeOf(reply) === 'sign-in-needed') {
            expect(reply.body).not.toContain('Lean-to');
            continue;
          }
          if (cookie === undefined) open.push(`${method} ${path} ${reply.statusCode}`);
        }
      }
    }
    expect(tried).toBeGreaterThan(200);
    expect(open.sort()).toEqual([
      'get /api/access 200',
      // The token in its address is the key, and this is none.
      'get /api/calendar/{token} 404',
      'post /api/access/accept 400',
      'post /api/access/sign-in 400',
    ]);
  });

  test('does not open a live stream, nor by its head', async () => {
    await lock();
    expect((await ask('/api/events')).statusCode).toBe(401);
    expect((await ask('/api/places', { method: 'HEAD' })).statusCode).toBe(401);
  });

  test.each([
    ['Basic', 'Basic b3duZXI6'],
    ['a bearer of nothing', 'Bearer '],
    ['a bearer with a quote', "Bearer ' or 1=1 --"],
    ['a long bearer', `Bearer ${'a'.repeat(5000)}`],
  ])('is not let in by %s', async (_, authorization) => {
    await lock();
    expect((await ask('/api/places', { headers: { authorization } })).statusCode).toBe(401);
  });

  test('is told how to sign in', async () => {
    await lock();
    const reply = await ask('/api/places');
    expect(reply.headers['www-authenticate']).toBe('Bearer');
    expect(reply.json()).toMatchObject({
      code: 'sign-in-needed',
      whatToDo: expect.stringContaining('passphrase'),
    });
    expect((await ask('/api/access')).json()).toEqual({ passphrase: true, you: 'nobody' });
  });

  test('begins to load nothing beside a page, where the owner begins with the places', async () => {
    const page = { accept: 'text/html' };
    const owner = await lock();
    expect((await ask('/round', { headers: page })).headers.link).toBeUndefined();
    const { link } = (await ask('/round', { cookie: owner, headers: page })).headers;
    expect(link).toBe('</api/places>; rel=preload; as=fetch; crossorigin');
    const week = async () => (await ask('/', { cookie: owner, headers: page })).headers.link;
    expect(await week()).toContain('</api/places/lean-to/outcome>; rel=preload');
    const second = { ...aPlace, id: 'second', name: 'Second' };
    await ask('/api/places', { method: 'POST', cookie: owner, body: second });
    expect(await week()).toBe(link);
    expect((await ask('/api/places', { cookie: owner, headers: page })).headers.link).toBeUndefined();
  });

  test('cannot choose a new passphrase', async () => {
    await lock();
    const reply = await ask('/api/access/passphrase', {
      method: 'POST',
      body: { passphrase: 'mine from now on' },
    });
    expect(reply.statusCode).toBe(401);
  });

  test('tries six passphrases a minute and no more', async () => {
    const owner = await lock();
    const codes = [];
    for (let i = 0; i < 8; i += 1) {
      codes.push(
        codeOf(
          await ask('/api/access/sign-in', { method: 'POST', body: { passphrase: `guess number ${i}` } }),
        ),
      );
    }
    expect(codes).toEqual([...Array(6).fill('passphrase-wrong'), 'too-many-requests', 'too-many-requests']);
    expect((await ask('/api/places', { cookie: owner })).statusCode).toBe(200);
  });

  test('asks 120 times a minute and no more, while the owner goes on', async () => {
    const owner = await lock();
    const statuses = new Map<number, number>();
    for (let i = 0; i < 125; i += 1) {
      const { statusCode } = await ask('/api/places');
      statuses.set(statusCode, (statuses.get(statusCode) ?? 0) + 1);
    }
    expect(Object.fromEntries(statuses)).toEqual({ 401: 120, 429: 5 });
    expect((await ask('/api/places', { cookie: owner })).statusCode).toBe(200);
  });
});

describe('behind a reverse proxy', () => {
  const six = Array(6).fill('passphrase-wrong');
  const guess = async (forwarded: string) =>
    codeOf(
      await ask('/api/access/sign-in', {
        method: 'POST',
        body: { passphrase: 'guess after guess' },
        headers: { 'x-forwarded-for': forwarded },
      }),
    );
  const guesses = async (addresses: readonly string[]) => {
    const codes: string[] = [];
    for (const address of addresses) codes.push(await guess(address));
    return codes;
  };
  const seven = Array.from({ length: 7 }, (_, i) => `203.0.113.${i}`);

  test('that is named, each address has tries of its own, whatever it says of itself', async () => {
    await house.close();
    house = await openHouse({ proxies: ['127.0.0.1'] });
    await lock();
    expect(await guesses(Array(7).fill('203.0.113.7'))).toEqual([...six, 'too-many-requests']);
    expect(await guess('203.0.113.8')).toBe('passphrase-wrong');
    // The proxy writes its caller at the end; what stands before it was invented.
    expect(await guesses(seven.map((address) => `${address}, 203.0.113.9`))).toEqual([
      ...six,
      'too-many-requests',
    ]);
  });

  test('that nobody named, an invented address brings no more tries', async () => {
    await house.close();
    house = await openHouse({ proxies: ['192.0.2.1'] });
    await lock();
    expect(await guesses(seven)).toEqual([...six, 'too-many-requests']);
  });
});

describe('the session', () => {
  // RFC 6265bis, section 4.1.2: HttpOnly and SameSite; Secure only where there is TLS.
  test('is a cookie no script reads and no other site sends', async () => {
    const reply = await house.send('POST', '/api/access/passphrase', { passphrase });
    expect(String(reply.headers['set-cookie'])).toMatch(
      /^glasstide=[\w-]{32}; Max-Age=34560000; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect(reply.body).not.toMatch(/[\w-]{32}/);
  });

  test('goes over TLS only where there is TLS', async () => {
    await house.close();
    house = await openHouse({ secure: true });
    const reply = await house.send('POST', '/api/access/passphrase', { passphrase });
    expect(String(reply.headers['set-cookie'])).toContain('; Secure');
  });

  test('begins with the passphrase and ends with the sign-out', async () => {
    await lock();
    const reply = await ask('/api/access/sign-in', { method: 'POST', body: { passphrase, name: 'phone' } });
    expect(reply.json()).toEqual({ passphrase: true, you: 'owner', name: 'phone' });
    const cookie = cookieOf(reply);
    expect((await ask('/api/places', { cookie })).statusCode).toBe(200);
    const out = await ask('/api/access/sign-out', { method: 'POST', cookie });
    expect(out.json()).toEqual({ passphrase: true, you: 'nobody' });
    expect((await ask('/api/places', { cookie })).statusCode).toBe(401);
  });
});

describe('a page of another address', () => {
  const body = { passphrase };
  test.each([
    ['Origin', { origin: 'http://elsewhere.example' }],
    ['Origin null', { origin: 'null' }],
    ['another port', { origin: 'http://glasshouse.example:81' }],
    ['Sec-Fetch-Site', { 'sec-fetch-site': 'cross-site' }],
    ['a sister domain', { 'sec-fetch-site': 'same-site', origin: 'http://glasshouse.example' }],
  ])('writes nothing, told by %s', async (_, headers) => {
    const cookie = await lock();
    for (const url of ['/api/places', '/api/access/sign-in', '/api/access/sign-out']) {
      const reply = await ask(url, { method: 'POST', cookie, headers, body });
      expect([reply.statusCode, codeOf(reply)]).toEqual([403, 'page-foreign']);
    }
    expect((await ask('/api/places', { cookie })).statusCode).toBe(200);
  });

  test.each([
    ['no Origin, as programs', {}],
    ['the same Origin', { origin: 'http://glasshouse.example' }],
    ['its own page', { origin: 'https://behind.example', 'sec-fetch-site': 'same-origin' }],
  ])('is not one with %s', async (_, headers) => {
    await lock();
    const reply = await ask('/api/access/sign-in', { method: 'POST', headers, body });
    expect(reply.statusCode).toBe(200);
  });

  test('may not even write to an open house', async () => {
    const headers = { host: 'localhost', origin: 'http://elsewhere.example' };
    const reply = await ask('/api/places', { method: 'POST', headers, body: { ...aPlace, id: 'other' } });
    expect(codeOf(reply)).toBe('page-foreign');
  });
});

describe('whoever was invited', () => {
  const count = {
    id: 'c1',
    trapId: 'door',
    time: '2026-05-12T18:00:00Z',
    exposureDays: 7,
    counts: { whitefly: 3 },
  };
  const counts = '/api/places/lean-to/trap-counts';

  test('looks, counts, and mends a count', async () => {
    const cookie = await helperOf(await lock());
    expect((await ask('/api/access', { cookie })).json()).toEqual({
      passphrase: true,
      you: 'helper',
      name: 'Ada',
    });
    expect((await ask('/api/places/lean-to/season', { cookie })).statusCode).toBe(200);
    expect((await ask(counts, { method: 'POST', cookie, body: count })).statusCode).toBe(201);
    const mended = { ...count, counts: { whitefly: 4 } };
    expect((await ask(`${counts}/c1`, { method: 'PUT', cookie, body: mended })).statusCode).toBe(200);
  });

  test('takes back what was entered with the same session, and puts it there again', async () => {
    const owner = await lock();
    const [cookie, other] = [await helperOf(owner), await helperOf(owner)];
    const undo = (by: string) => ask(`${counts}/c1/undo`, { method: 'POST', cookie: by });
    const present = async () => (await ask(counts, { cookie })).json().records;
    await ask(counts, { method: 'POST', cookie, body: count });
    expect([(await undo(other)).statusCode, await present()]).toEqual([403, [expect.anything()]]);
    expect([(await undo(cookie)).statusCode, await present()]).toEqual([200, []]);
    expect([(await undo(cookie)).statusCode, await present()]).toEqual([200, [expect.anything()]]);
    await ask(`${counts}/c1`, { method: 'PUT', cookie: owner, body: { ...count, counts: { whitefly: 9 } } });
    expect(codeOf(await undo(cookie))).toBe('not-allowed');
    expect(await present()).toMatchObject([{ data: { counts: { whitefly: 9 } } }]);
  });

  test('is told of each entry whether it may be undone, as the house will answer', async () => {
    const owner = await lock();
    const cookie = await helperOf(owner);
    const trap = '/api/places/lean-to/traps';
    const enter = (by: string, id: string) =>
      ask(counts, { method: 'POST', cookie: by, body: { ...count, id } });
    const undo = (by: string, url: string, id: string) =>
      ask(`${url}/${id}/undo`, { method: 'POST', cookie: by });
    for (const id of ['kept', 'taken']) {
      await enter(cookie, `mine-${id}`);
      await enter(owner, `theirs-${id}`);
    }
    await undo(cookie, counts, 'mine-taken');
    await undo(owner, counts, 'theirs-taken');
    const told = async (url: string, by: string) =>
      ((await ask(url, { cookie: by })).json().records as { id: string; mayUndo: boolean }[])
        .map(({ id, mayUndo }) => [id, mayUndo])
        .sort();
    const tried = async (url: string, ids: readonly string[]) => {
      const answers = [];
      for (const id of ids) answers.push([id, (await undo(cookie, url, id)).statusCode === 200]);
      return answers;
    };
    const [kept, taken, traps] = [
      await told(counts, cookie),
      await told(`${counts}/taken-back`, cookie),
      await told(trap, cookie),
    ];
    expect([...kept, ...taken, ...traps].map(([, mayUndo]) => mayUndo)).toEqual([
      true,
      false,
      true,
      false,
      false,
    ]);
    expect(await told(`${counts}/taken-back`, owner)).toEqual([
      ['mine-taken', true],
      ['theirs-taken', true],
    ]);
    expect(await tried(counts, ['mine-kept', 'theirs-kept'])).toEqual(kept);
    expect(await tried(counts, ['mine-taken', 'theirs-taken'])).toEqual(taken);
    expect(await tried(trap, ['door'])).toEqual(traps);
  });

  test.each([
    ['DELETE', `${counts}/c1`],
    ['POST', `${counts}/c1/undo`],
    ['DELETE', '/api/places/lean-to'],
    ['PUT', '/api/places/lean-to'],
    ['POST', '/api/places/lean-to/traps'],
    ['POST', '/api/places/lean-to/releases'],
    ['POST', '/api/season'],
    ['POST', '/api/places/lean-to/calendar-token'],
    ['POST', '/api/access/passphrase'],
    ['POST', '/api/access/credentials'],
    ['DELETE', '/api/access/credentials/x'],
    ['GET', '/api/access/credentials'],
  ] as const)('may not %s %s', async (method, url) => {
    const owner = await lock();
    await ask(counts, { method: 'POST', cookie: owner, body: count });
    const cookie = await helperOf(owner);
    const reply = await ask(url, {
      method,
      cookie,
      ...(method !== 'DELETE' && method !== 'GET' && { body: {} }),
    });
    expect([reply.statusCode, codeOf(reply)]).toEqual([403, 'not-allowed']);
    expect((await ask(counts, { cookie })).json().records).toHaveLength(1);
  });

  test('is out when the owner takes the session away', async () => {
    const owner = await lock();
    const cookie = await helperOf(owner);
    const { credentials } = (await ask('/api/access/credentials', { cookie: owner })).json();
    const ada = credentials.find(({ name }: { name: string }) => name === 'Ada');
    await ask(`/api/access/credentials/${ada.id}`, { method: 'DELETE', cookie: owner });
    expect((await ask('/api/places', { cookie })).statusCode).toBe(401);
  });
});

describe('the owner', () => {
  test('sees who may come in, without a secret', async () => {
    const cookie = await lock();
    await helperOf(cookie);
    const body = { kind: 'device', name: 'Bench board', placeId: 'lean-to', sensorId: 'bench' };
    const made = (await ask('/api/access/credentials', { method: 'POST', cookie, body })).json();
    expect(made).toMatchObject({
      credential: { user: 'lean-to/bench' },
      secret: expect.stringMatching(/^[\w-]{32}$/),
    });
    expect(house.access.deviceOf('lean-to/bench', made.secret)).toMatchObject({ sensorId: 'bench' });
    const listed = await ask('/api/access/credentials', { cookie });
    const byName = (a: { name: string }, b: { name: string }) => (a.name < b.name ? -1 : 1);
    expect(listed.json().credentials.sort(byName)).toMatchObject([
      { kind: 'session', role: 'helper', name: 'Ada', yours: false },
      { kind: 'device', placeId: 'lean-to', sensorId: 'bench', user: 'lean-to/bench' },
      { kind: 'session', role: 'owner', yours: true },
    ]);
    expect(listed.body).not.toContain(made.secret);
  });

  test('gives a board of no place no password', async () => {
    const cookie = await lock();
    const body = { kind: 'device', name: 'x', placeId: 'nowhere' };
    const reply = await ask('/api/access/credentials', { method: 'POST', cookie, body });
    expect(reply.statusCode).toBe(404);
  });

  test('gives a program a key that reads and does not write', async () => {
    const cookie = await lock();
    const body = { kind: 'reader', name: 'watcher' };
    const { secret } = (await ask('/api/access/credentials', { method: 'POST', cookie, body })).json();
    const headers = { authorization: `Bearer ${secret}` };
    expect((await ask('/api/health', { headers })).statusCode).toBe(200);
    const write = await ask('/api/places/lean-to/trap-counts', { method: 'POST', headers, body: {} });
    expect(codeOf(write)).toBe('not-allowed');
    expect((await ask('/api/access/credentials', { headers })).statusCode).toBe(403);
  });

  test('renews the calendar’s address', async () => {
    const cookie = await lock();
    const url = '/api/places/lean-to/calendar-token';
    const first = (await ask(url, { cookie })).json().token;
    expect((await ask(url, { cookie })).json().token).toBe(first);
    expect((await ask(url, { method: 'POST', cookie })).json().token).not.toBe(first);
  });
});

test('the log holds no secret', async () => {
  const lines: string[] = [];
  await house.close();
  house = await openHouse({ log: 'info', logStream: { write: (line) => void lines.push(line) } });
  const cookie = await lock();
  const { secret } = (
    await ask('/api/access/credentials', { method: 'POST', cookie, body: { kind: 'reader', name: 'x' } })
  ).json();
  await ask('/api/places', { headers: { authorization: `Bearer ${secret}` } });
  await ask(`/api/calendar/${secret}.ics`);
  await ask('/api/access/sign-in', { method: 'POST', body: { passphrase } });
  const log = lines.join('');
  expect(lines.length).toBeGreaterThan(5);
  expect(log).toContain('/api/places');
  expect(log).not.toContain(secret);
  expect(log).not.toContain(cookie.split('=')[1]);
  expect(log).not.toContain('copper');
});
