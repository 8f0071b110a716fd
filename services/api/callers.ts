/**
 * Who asks, and whether they may. Each route names the least role it needs in `config.access`; one that
 * names nothing is for readers when it only reads, and for the owner when it writes.
 */
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Access, Caller, Role } from '../access/door.ts';
import { mayDo } from '../access/door.ts';
import { RefusalError } from '../refusals.ts';
import type { ApiDeps } from './deps.ts';
import { isThisMachine } from './names.ts';

declare module 'fastify' {
  interface FastifyRequest {
    caller: Caller;
  }
  interface FastifyContextConfig {
    /** The least role that may call the route; `nobody` opens it to everybody. */
    access?: Role;
  }
}

export const sessionCookie = 'glasstide';
const reading = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Finds out who asks, before the limits are looked at: they depend on it. */
export function knowCaller(app: FastifyInstance, { access }: ApiDeps): void {
  app.decorateRequest('caller');
  app.addHook('onRequest', async (request) => {
    request.caller = callerNow(request, access);
  });
}

/** Who asks, as of now: a session may have ended since its request came. */
export const callerNow = (request: FastifyRequest, access: Access): Caller =>
  access.callerOf(keyOf(request) ?? request.cookies[sessionCookie]);

/** Lets through what the caller may do: after the limits, before a body is read. */
export function letThrough(app: FastifyInstance): void {
  app.addHook('preParsing', async (request, reply) => {
    // The pages themselves hold nothing of the house.
    if (!request.routeOptions.url?.startsWith('/api/')) return;
    refuseForeignPage(request);
    const { access: needed = reading.has(request.method) ? 'reader' : 'owner' } = request.routeOptions.config;
    const { role } = request.caller;
    if (mayDo(role, needed)) return;
    if (role === 'nobody') throw signInNeeded(reply);
    throw new RefusalError({ code: 'not-allowed', reason: limitOf[role] });
  });
}

const limitOf: Record<Exclude<Role, 'nobody'>, string> = {
  reader: 'This key may only read. Nothing was changed.',
  helper: 'You may count here, but not take away or set up. Nothing was changed.',
  owner: 'Nobody may do that. Nothing was changed.',
};

/** RFC 6750, section 2.1: a key of a program comes in the Authorization header. */
function keyOf({ headers }: FastifyRequest): string | undefined {
  return /^Bearer ([\w-]{1,100})$/.exec(headers.authorization ?? '')?.[1];
}

function signInNeeded(reply: FastifyReply): RefusalError {
  reply.header('www-authenticate', 'Bearer');
  return new RefusalError({ code: 'sign-in-needed', reason: 'This house is locked.' });
}

/**
 * A page of another origin must not write with the visitor's cookie. The cookie's SameSite and the
 * header Idempotency-Key, which no foreign form can send, hold already; this does not rest on either.
 */
function refuseForeignPage({ method, headers, host }: FastifyRequest): void {
  if (reading.has(method)) return;
  const site = headers['sec-fetch-site'];
  if (site === 'same-origin' || site === 'none') return;
  const { origin } = headers;
  if (site === undefined && (origin === undefined || hostOf(origin) === host)) return;
  const reason = `The request came from a page at ${String(origin ?? site).slice(0, 100)}. Nothing was changed.`;
  throw new RefusalError({ code: 'page-foreign', reason });
}

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined;
}

const relays = ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'];

/**
 * An open house trusts this machine. A foreign page could still reach in from the owner's own browser by
 * giving its domain the address 127.0.0.1 (DNS rebinding); the Host header then names that domain.
 */
export function refuseOtherNames({ access }: ApiDeps) {
  return async ({ hostname, headers }: FastifyRequest): Promise<void> => {
    if (!access.isOpen()) return;
    // A proxy may ask in this machine's name for anybody; an open house knows no way to tell for whom.
    const relayed = relays.some((name) => headers[name] !== undefined);
    if (isThisMachine(hostname) && !relayed) return;
    throw new RefusalError({
      code: 'host-unknown',
      reason: `This service answers on this machine only, and the request was for ${hostname.slice(0, 100)}.`,
    });
  };
}
