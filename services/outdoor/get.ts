/** One GET with limits: which addresses, how large, how long, and no other host than the one that was named. */
import { lookup as systemLookup } from 'node:dns';
import { get as httpGet, type IncomingMessage } from 'node:http';
import { get as httpsGet } from 'node:https';
import { isIP, type LookupFunction } from 'node:net';
import { shownAddress } from '../outdoorSource.ts';
import { mayReach } from './address.ts';

export interface GetLimits {
  mostBytes: number;
  timeoutMs: number;
  mayReach(address: string): boolean;
}

const usualLimits: GetLimits = { mostBytes: 1_000_000, timeoutMs: 20_000, mayReach };
const mostRedirects = 3;

/** Why nothing came, in a sentence for the owner. */
export class NotFetched extends Error {}

/**
 * The body of an http or https address. The address that a name stands for is looked at as it is connected to, so that
 * a name cannot change its meaning in between.
 * @throws NotFetched
 */
export async function getText(address: string, limits: Partial<GetLimits> = {}): Promise<string> {
  const all = { ...usualLimits, ...limits };
  const timeUp = AbortSignal.timeout(all.timeoutMs);
  let url = new URL(address);
  for (let redirects = 0; redirects <= mostRedirects; redirects += 1) {
    const answer = await ask(url, all, timeUp);
    const status = answer.statusCode ?? 0;
    if (status === 200) return bodyOf(answer, url, all);
    answer.destroy();
    const to = answer.headers.location;
    if (status < 300 || status > 399 || to === undefined)
      throw new NotFetched(`${shownAddress(url.href)} answered ${status}.`);
    url = redirected(url, to);
  }
  throw new NotFetched(`${shownAddress(address)} leads round in circles.`);
}

function redirected(from: URL, to: string): URL {
  const next = URL.canParse(to, from) ? new URL(to, from) : undefined;
  const sameHost =
    next?.hostname === from.hostname && (next.port === from.port || next.protocol !== from.protocol);
  const notWeaker = from.protocol === 'http:' || next?.protocol === 'https:';
  if (next && sameHost && notWeaker && /^https?:$/.test(next.protocol)) return next;
  const where = next ? shownAddress(next.href) : 'nowhere';
  throw new NotFetched(
    `${shownAddress(from.href)} sends on to ${where}. It was not followed: set that address if you trust it.`,
  );
}

function ask(url: URL, limits: GetLimits, signal: AbortSignal): Promise<IncomingMessage> {
  const host = url.hostname.replace(/^\[|\]$/g, '');
  if (isIP(host) !== 0 && !limits.mayReach(host)) return Promise.reject(outOfBounds(url));
  const get = url.protocol === 'https:' ? httpsGet : httpGet;
  return new Promise((resolve, reject) => {
    const options = {
      signal,
      agent: false as const,
      lookup: guardedLookup(limits, url),
      headers: { accept: 'application/json', 'accept-encoding': 'identity', 'user-agent': 'glasstide' },
    };
    get(url, options, resolve).on('error', (error) => reject(wordsOf(error, url)));
  });
}

function guardedLookup(limits: GetLimits, url: URL): LookupFunction {
  return (name, options, done) => {
    systemLookup(name, { ...options, all: true }, (error, found) => {
      if (error) return done(error, []);
      if (found.length === 0 || !found.every(({ address }) => limits.mayReach(address)))
        return done(outOfBounds(url), []);
      if (options.all) return done(null, found);
      return done(null, found[0]!.address, found[0]!.family);
    });
  };
}

async function bodyOf(answer: IncomingMessage, url: URL, limits: GetLimits): Promise<string> {
  const pieces: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const piece of answer as AsyncIterable<Buffer>) {
      bytes += piece.length;
      if (bytes > limits.mostBytes)
        throw new NotFetched(`${shownAddress(url.href)} sent more than ${limits.mostBytes} bytes: too much.`);
      pieces.push(piece);
    }
  } catch (error) {
    throw wordsOf(error, url);
  }
  return Buffer.concat(pieces).toString('utf8');
}

function outOfBounds(url: URL): NotFetched {
  return new NotFetched(
    `${shownAddress(url.href)} points at this machine itself or a reserved address: not fetched.`,
  );
}

function wordsOf(error: unknown, url: URL): NotFetched {
  if (error instanceof NotFetched) return error;
  if (error instanceof Error && /Abort|Timeout/.test(error.name))
    return new NotFetched(`${shownAddress(url.href)} did not answer in time.`);
  const why = error instanceof Error ? error.message : String(error);
  return new NotFetched(`${shownAddress(url.href)} could not be reached (${why}).`);
}
