import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { calendarTokens } from '../../access/door.ts';
import { RefusalError } from '../../refusals.ts';
import type { OutboxEntry } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { nothingAt } from '../errors.ts';
import { placePath, refused } from '../schemas/answers.ts';
import { phone, settings, target, telling } from '../schemas/telling.ts';
import { isoOf } from '../window.ts';
import { idFromKey } from '../writes.ts';

const mostPhones = 20;
const shownSettled = 20;

/** How the people of a place are told: hours, mail addresses, phones, and what became of each message. */
export const tellingRoutes =
  ({ store, clock, telling: room }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const answer = { 200: telling, ...refused };

    app.get(
      '/places/:place/telling',
      {
        config: { access: 'helper' },
        schema: { summary: 'How the people of this place are told', params: placePath, response: answer },
      },
      async ({ params }) => shown(params.place),
    );

    app.put(
      '/places/:place/telling',
      {
        schema: {
          summary: 'Change quiet hours, letter and mail addresses',
          params: placePath,
          body: settings,
          response: answer,
        },
      },
      async ({ params, body: { letter, ...rest } }) => {
        store.telling.keepSettings(params.place, { ...rest, ...(letter && { letter }) });
        return shown(params.place);
      },
    );

    app.post(
      '/places/:place/telling/phones',
      {
        config: { access: 'helper' },
        schema: { summary: 'Tell this browser too', params: placePath, body: phone, response: answer },
      },
      async (request) => {
        const { params, body } = request;
        const known = store.telling.phones.list(params.place);
        if (known.length >= mostPhones && !known.some(({ endpoint }) => endpoint === body.endpoint)) {
          throw new RefusalError({
            code: 'record-invalid',
            reason: `${mostPhones} phones are told already. Take one away first.`,
          });
        }
        const { endpoint, keys, name } = body;
        const added = { placeId: params.place, id: idFromKey(request), addedMs: clock.nowMs() };
        store.telling.phones.save({ ...added, endpoint, ...keys, name });
        return shown(params.place);
      },
    );

    app.delete(
      '/places/:place/telling/phones/:id',
      {
        config: { access: 'helper' },
        schema: {
          summary: 'Tell this browser no longer',
          params: placePath.extend({ id: z.string().max(64) }),
          response: answer,
        },
      },
      async ({ params }) => {
        store.telling.phones.remove(params.place, params.id);
        return shown(params.place);
      },
    );

    app.post(
      '/places/:place/telling/try',
      {
        schema: {
          summary: 'Send a trial at once',
          params: placePath,
          body: target,
          response: { 200: z.object({ sent: z.boolean(), fault: z.string().optional() }), ...refused },
        },
      },
      async ({ params, body }) => {
        const fault = await tryOut(params.place, body);
        return { sent: fault === undefined, ...(fault !== undefined && { fault }) };
      },
    );

    async function tryOut(placeId: string, body: z.infer<typeof target>): Promise<string | undefined> {
      if (body.channel === 'mqtt') {
        return (await room.tryMqtt(placeId))
          ? undefined
          : 'The broker is away: it gets the newest when it is back.';
      }
      const { channel, to } = body;
      const known =
        channel === 'mail'
          ? room.settings(placeId).mailTo.includes(to)
          : store.telling.phones.list(placeId).some(({ id }) => id === to);
      if (!known) throw new RefusalError({ code: 'record-unknown', reason: 'Nobody here is told by that.' });
      return room.tryOut(placeId, { channel, to });
    }

    function shown(placeId: string): z.infer<typeof telling> {
      const set = room.settings(placeId);
      const phones = store.telling.phones.list(placeId);
      const waiting = store.telling.outbox.waiting(placeId);
      const targets = [
        ...set.mailTo.map((to) => ({ channel: 'mail' as const, to })),
        ...phones.map(({ id }) => ({ channel: 'push' as const, to: id })),
      ];
      return {
        settings: { ...set, letter: set.letter ?? null },
        canMail: room.canMail,
        pushPublicKey: room.pushPublicKey,
        phones: phones.map(({ id, name, addedMs }) => ({ id, name, addedAt: isoOf(addedMs) })),
        targets: targets.map((each) => {
          const own = waiting.filter(({ channel, to }) => channel === each.channel && to === each.to);
          const lastMs = store.telling.outbox.lastSentMs(placeId, each);
          return { ...each, ...stateOf(own), ...(lastMs !== undefined && { lastSentAt: isoOf(lastMs) }) };
        }),
        settled: store.telling.outbox.settled(placeId, shownSettled).map(entryShown),
      };
    }
  };

function stateOf(waiting: readonly OutboxEntry[]) {
  const stuck = waiting.find(({ fault }) => fault !== undefined);
  return {
    waiting: waiting.length,
    ...(stuck?.fault !== undefined && { fault: stuck.fault, nextTryAt: isoOf(stuck.nextTryMs) }),
  };
}

const entryShown = ({ channel, to, event, about, state, settledMs = 0 }: OutboxEntry) => ({
  channel,
  to,
  event,
  about: about.replace(/@\d+$/, ''),
  sent: state === 'sent',
  at: isoOf(settledMs),
});

/** The calendar feed. Calendar programs cannot sign in: the address is the secret. */
export const calendarRoutes =
  ({ store, telling: room }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const tokens = calendarTokens(store.credentials);
    app.get(
      '/calendar/:token',
      {
        config: { access: 'nobody' },
        schema: {
          summary: 'Days to keep as an iCalendar feed (RFC 5545)',
          params: z.object({ token: z.string().max(200) }),
          response: { 200: z.string().meta({ description: 'text/calendar' }), ...refused },
        },
      },
      async (request, reply) => {
        const placeId = tokens.placeOf(request.params.token.replace(/\.ics$/, ''));
        const feed = placeId === undefined ? undefined : room.feed(placeId);
        // The address itself is the secret, so a refusal does not repeat it.
        if (feed === undefined) throw new RefusalError(nothingAt({ method: 'GET', url: '/api/calendar' }));
        return reply.type('text/calendar; charset=utf-8').header('cache-control', 'no-cache').send(feed);
      },
    );
  };
