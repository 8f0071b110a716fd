import type { FastifyReply } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { calendarTokens, type Made, userOf } from '../../access/door.ts';
import { slug } from '../../model/index.ts';
import { RefusalError } from '../../refusals.ts';
import type { Credential } from '../../store/store.ts';
import { sessionCookie } from '../callers.ts';
import type { ApiDeps } from '../deps.ts';
import { current } from '../keeping.ts';
import { fewTries } from '../limits.ts';
import { placePath, refused } from '../schemas/answers.ts';
import { isoOf } from '../window.ts';

const passphrase = z.string().max(1000);
const name = z.string().trim().min(1).max(80);
const someBrowser = 'a phone or computer';

const state = z.object({
  passphrase: z.boolean().meta({ description: 'Whether one was chosen; until then the house is open.' }),
  you: z.enum(['nobody', 'reader', 'helper', 'owner']),
  name: z.string().optional(),
});
const credential = z.object({
  id: z.string(),
  kind: z.enum(['session', 'invite', 'device', 'reader']),
  name: z.string(),
  role: z.enum(['owner', 'helper']).optional(),
  placeId: slug.optional(),
  sensorId: slug.optional(),
  user: z.string().optional(),
  yours: z.boolean(),
  createdAt: z.string(),
  lastUsedAt: z.string().optional(),
  expiresAt: z.string().optional(),
});
const made = z.object({
  credential,
  secret: z.string().meta({ description: 'Shown this once; only its hash is kept.' }),
});
const wanted = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('invite'), name }),
  z.strictObject({ kind: z.literal('reader'), name }),
  z.strictObject({ kind: z.literal('device'), name, placeId: slug, sensorId: slug.optional() }),
]);

/** Browsers forget a cookie after 400 days at the latest; the service forgets the session sooner. */
const cookieSeconds = 400 * 86_400;

/** The passphrase, sessions, invitations, and the secrets of boards and programs. */
export const accessRoutes =
  ({ access, store, secure }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const tag = { response: { 200: state, ...refused } };

    const signedIn = (reply: FastifyReply, { secret, credential: { role = 'helper', name } }: Made) => {
      reply.setCookie(sessionCookie, secret, {
        path: '/',
        httpOnly: true,
        sameSite: 'strict',
        secure,
        maxAge: cookieSeconds,
      });
      return { passphrase: true, you: role, name };
    };

    app.get(
      '/access',
      {
        config: { access: 'nobody' },
        schema: { summary: 'Who am I here, and is there a passphrase?', ...tag },
      },
      async ({ caller: { role, credential } }) => ({
        passphrase: !access.isOpen(),
        you: role,
        ...(credential && { name: credential.name }),
      }),
    );

    app.post(
      '/access/passphrase',
      {
        config: fewTries,
        schema: {
          summary: 'Choose the passphrase of the house; every other owner is signed out',
          body: z.strictObject({
            passphrase,
            before: passphrase.optional(),
            name: name.default(someBrowser),
          }),
          ...tag,
        },
      },
      async ({ body }, reply) => signedIn(reply, await access.choosePassphrase(body)),
    );

    app.post(
      '/access/sign-in',
      {
        config: { ...fewTries, access: 'nobody' },
        schema: {
          summary: 'Begin a session with the passphrase',
          body: z.strictObject({ passphrase, name: name.default(someBrowser) }),
          ...tag,
        },
      },
      async ({ body }, reply) => signedIn(reply, await access.signIn(body.passphrase, body.name)),
    );

    app.post(
      '/access/accept',
      {
        config: { ...fewTries, access: 'nobody' },
        schema: {
          summary: 'Begin a session with an invitation',
          body: z.strictObject({ invitation: z.string().max(200) }),
          ...tag,
        },
      },
      async ({ body }, reply) => signedIn(reply, access.accept(body.invitation)),
    );

    app.post(
      '/access/sign-out',
      { config: { access: 'reader' }, schema: { summary: 'End this session', ...tag } },
      async ({ caller }, reply) => {
        if (caller.credential) access.revoke(caller.credential.id);
        reply.clearCookie(sessionCookie, { path: '/' });
        return { passphrase: !access.isOpen(), you: access.callerOf(undefined).role };
      },
    );

    app.get(
      '/access/credentials',
      {
        config: { access: 'owner' },
        schema: {
          summary: 'Sessions, invitations, boards and keys, without their secrets',
          response: { 200: z.object({ credentials: z.array(credential) }), ...refused },
        },
      },
      async ({ caller }) => ({
        credentials: access.list().map((each) => shown(each, caller.credential?.id)),
      }),
    );

    app.post(
      '/access/credentials',
      {
        schema: {
          summary: 'Invite a person, or make the secret of a board or a program',
          body: wanted,
          response: { 201: made, ...refused },
        },
      },
      async ({ body }, reply) => {
        const { credential, secret } = makeFor(body);
        return reply.code(201).send({ credential: shown(credential), secret });
      },
    );

    app.delete(
      '/access/credentials/:id',
      {
        schema: {
          summary: 'Take a session, invitation, board or key away',
          params: z.object({ id: z.string().max(64) }),
          response: { 200: z.object({ credentials: z.array(credential) }), ...refused },
        },
      },
      async ({ params, caller }) => {
        if (!access.revoke(params.id)) {
          throw new RefusalError({ code: 'record-unknown', reason: 'It was taken away already.' });
        }
        return { credentials: access.list().map((each) => shown(each, caller.credential?.id)) };
      },
    );

    function makeFor(body: z.infer<typeof wanted>): Made {
      if (body.kind === 'invite') return access.invite(body.name);
      if (body.kind === 'reader') return access.makeReader(body.name);
      const { placeId, sensorId } = body;
      current(store.records, { kind: 'place', placeId, id: placeId });
      return access.makeDevice(body.name, { placeId, ...(sensorId !== undefined && { sensorId }) });
    }
  };

/** The token in the address of a place's calendar. */
export const calendarTokenRoutes =
  ({ store }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const tokens = calendarTokens(store.credentials);
    const response = { 200: z.object({ token: z.string() }), ...refused };
    app.get(
      '/places/:place/calendar-token',
      {
        config: { access: 'helper' },
        schema: {
          summary: "The secret in the address of this place's calendar",
          params: placePath,
          response,
        },
      },
      async ({ params }) => ({ token: tokens.tokenOf(params.place) }),
    );
    app.post(
      '/places/:place/calendar-token',
      {
        schema: {
          summary: 'Renew it; the earlier address opens nothing any more',
          params: placePath,
          response,
        },
      },
      async ({ params }) => ({ token: tokens.renew(params.place) }),
    );
  };

function shown({ createdMs, lastUsedMs, expiresMs, ...rest }: Credential, yourId?: string) {
  const { kind, placeId, sensorId } = rest;
  const device = kind === 'device' && placeId !== undefined && { placeId, ...(sensorId && { sensorId }) };
  return {
    ...rest,
    yours: rest.id === yourId,
    createdAt: isoOf(createdMs),
    ...(device && { user: userOf(device) }),
    ...(lastUsedMs !== undefined && { lastUsedAt: isoOf(lastUsedMs) }),
    ...(expiresMs !== undefined && { expiresAt: isoOf(expiresMs) }),
  };
}
