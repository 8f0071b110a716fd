/** A tiny server for the page checks: the built dashboard and canned answers in the shapes of the API. */
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import * as garden from './fixtureRecords.ts';
import * as season from './fixtureSeason.ts';

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

export interface FixtureServer {
  url: string;
  /** Bodies of the writes so far, with their path and key. */
  writes: { method: string; path: string; key: string | undefined; body: unknown }[];
  /** The next write is refused with this answer. */
  refuseNext(answer: object): void;
  /** Without a place the dashboard asks for the first one. */
  empty(yes: boolean): void;
  /** A new sentence, told to the open pages as the service tells it. */
  issue(sentence: string): void;
  /** The first sentence again, as before any was issued. */
  forget(): void;
  close(): Promise<void>;
}

function answerTo(path: string): unknown {
  const place = `/api/places/${season.place.id}`;
  const noun = path.slice(place.length + 1);
  const fixed: Record<string, unknown> = {
    '/api/health': { status: 'well', reasons: [], now: season.nowIso, demo: false, version: '0.1.0' },
    '/api/access': { passphrase: false, you: 'owner' },
    '/api/places': { places: [season.place] },
    '/api/quarantine': { messages: garden.refusedMessages },
    [`${place}/outcome`]: { issuedAt: season.nowIso, forecast: season.forecast, advice: season.advice },
    [`${place}/temperature`]: garden.temperature,
    [`${place}/held`]: garden.held,
    [`${place}/shopping`]: garden.shopping,
    [`${place}/seasons`]: garden.seasons,
    [`${place}/arrivals`]: { arrivals: garden.arrivals },
    [`${place}/warnings`]: {
      warnings: [
        {
          id: 'w1',
          rule: 'order-by',
          raisedAt: season.nowIso,
          deadline: '2026-05-18T11:00:00Z',
          text: 'Order by Mon 18 May.',
          reason: 'The last counts were 4, 9 then 14 whitefly a trap and week.',
          ends: 'Ends when the order is entered, or the advice changes.',
          urgent: false,
          state: 'open',
        },
      ],
    },
  };
  return fixed[path] ?? (garden.records[noun] && { records: garden.records[noun] });
}

async function bodyOf(request: IncomingMessage): Promise<unknown> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  const text = Buffer.concat(chunks).toString('utf8');
  return text === '' ? undefined : JSON.parse(text);
}

/** Compressed, as the service sends it. */
function sendJson(response: ServerResponse, status: number, body: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json', 'content-encoding': 'gzip' });
  response.end(gzipSync(JSON.stringify(body)));
}

/** When a new sentence was issued. */
const newerIso = season.iso(season.nowMs + 2 * season.hourMs);

/** The same policy as the service's, so that a page which needs more fails here too. */
const policy =
  "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; script-src 'self'";

/** `next`: what the page asks next, named as the service does in an open house. */
async function sendFile(response: ServerResponse, dist: string, path: string, next: string[]): Promise<void> {
  const file = extname(path) === '' ? 'index.html' : path.slice(1);
  try {
    // Compressed where the build left a copy, as the service sends it.
    const compressed = await readFile(join(dist, `${file}.gz`)).catch(() => undefined);
    const body = compressed ?? (await readFile(join(dist, file)));
    response.writeHead(200, {
      ...(compressed && { 'content-encoding': 'gzip' }),
      'content-type': types[extname(file)] ?? 'application/octet-stream',
      'content-security-policy': policy,
      ...(file === 'index.html' && {
        link: next.map((each) => `<${each}>; rel=preload; as=fetch; crossorigin`).join(', '),
      }),
    });
    response.end(body);
  } catch {
    response.writeHead(404).end();
  }
}

/** Serves the dashboard built into `dist`; `instead` holds other answers, by path. */
export async function startFixtureServer(
  dist: string,
  instead: Record<string, unknown> = {},
): Promise<FixtureServer> {
  const writes: FixtureServer['writes'] = [];
  const state: { refusal: object | undefined; empty: boolean; sentence: string | undefined } = {
    refusal: undefined,
    empty: false,
    sentence: undefined,
  };
  const listeners = new Set<ServerResponse>();
  const { places } = (instead['/api/places'] ?? { places: [season.place] }) as { places: { id: string }[] };
  const ofOnlyPlace = places.length === 1 ? [`/api/places/${places[0]?.id}/outcome`] : [];
  const handle = async (request: IncomingMessage, response: ServerResponse) => {
    const url = new URL(request.url ?? '/', 'http://fixture');
    const { method = 'GET' } = request;
    if (!url.pathname.startsWith('/api/')) {
      const more = url.pathname === '/' && !state.empty ? ofOnlyPlace : [];
      return sendFile(response, dist, url.pathname, ['/api/places', ...more]);
    }
    if (url.pathname === '/api/events') {
      response.writeHead(200, { 'content-type': 'text/event-stream' });
      const issued = { placeId: season.place.id, issuedAt: newerIso };
      response.write(state.sentence ? `event: issued\ndata: ${JSON.stringify(issued)}\n\n` : ': here\n\n');
      listeners.add(response);
      response.on('close', () => listeners.delete(response));
      return;
    }
    if (method !== 'GET') {
      const body = await bodyOf(request);
      const key = request.headers['idempotency-key'];
      writes.push({ method, path: url.pathname, key: typeof key === 'string' ? key : undefined, body });
      const refusal = state.refusal;
      state.refusal = undefined;
      if (refusal) return sendJson(response, 422, refusal);
      const data = {
        id: `new-${writes.length}`,
        version: 1,
        changedAt: season.iso(season.nowMs + season.hourMs),
        deleted: false,
        data: body,
      };
      return sendJson(response, 201, data);
    }
    if (url.pathname === '/api/places' && state.empty) return sendJson(response, 200, { places: [] });
    if (url.pathname.endsWith('/readings')) {
      const raw = url.searchParams.get('resolution') === 'raw';
      return sendJson(response, 200, raw ? { readings: garden.readings } : { hours: garden.hours });
    }
    if (url.pathname.endsWith('/outcome') && state.sentence && !instead[url.pathname]) {
      const advice = { ...season.advice, sentence: state.sentence };
      return sendJson(response, 200, { issuedAt: newerIso, forecast: season.forecast, advice });
    }
    if (url.pathname.endsWith('/outdoor')) return sendJson(response, 200, {});
    const answer = instead[url.pathname] ?? answerTo(url.pathname);
    const refusal = { code: 'route-unknown', reason: 'Not in the fixture.', whatToDo: 'Add it.', issues: [] };
    return answer ? sendJson(response, 200, answer) : sendJson(response, 404, refusal);
  };
  const server = createServer((request, response) => void handle(request, response));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    writes,
    refuseNext: (answer) => {
      state.refusal = answer;
    },
    empty: (yes) => {
      state.empty = yes;
    },
    issue: (sentence) => {
      state.sentence = sentence;
      const change = { placeId: season.place.id, what: 'outcome' };
      for (const each of listeners) each.write(`event: change\ndata: ${JSON.stringify(change)}\n\n`);
    },
    forget: () => {
      state.sentence = undefined;
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
