import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { sensor, slug } from '../../model/index.ts';
import { type RefusalCode, RefusalError, refusals } from '../../refusals.ts';
import type { QuarantinedMessage } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { quarantinedMessage, refused } from '../schemas/answers.ts';
import { isoOf } from '../window.ts';

/** So many are read again at once, too. */
const mostShown = 1000;
const rereadBody = z.strictObject({
  ids: z.array(z.int()).min(1).max(mostShown),
  unit: sensor.shape.unit.unwrap().optional(),
});

/** Messages that could not be used, kept with their reason until they are mended or dismissed. */
export const quarantineRoutes =
  ({ store, reread, changes }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/quarantine',
      {
        schema: {
          summary: 'The newest 1,000 messages that could not be used',
          querystring: z.object({ place: slug.optional() }),
          response: { 200: z.object({ messages: z.array(quarantinedMessage) }), ...refused },
        },
      },
      async ({ query }) => ({
        messages: store.quarantine
          .list({ limit: mostShown, ...(query.place !== undefined && { placeId: query.place }) })
          .map(shown),
      }),
    );

    app.post(
      '/quarantine/:id/dismiss',
      {
        schema: {
          summary: 'Set a message aside for good',
          params: z.object({ id: z.coerce.number().int() }),
          response: { 200: quarantinedMessage, ...refused },
        },
      },
      async ({ params }) => {
        const message = messageOf(params.id);
        store.quarantine.settle(message.id, 'dismissed');
        changes.tell({ placeId: message.placeId ?? '', what: 'quarantine' });
        return shown(messageOf(params.id));
      },
    );

    app.post(
      '/quarantine/reread',
      {
        schema: {
          summary: 'Read messages again; with a unit, the unit of their sensor is changed too',
          body: rereadBody,
          response: { 200: z.object({ mended: z.int(), stillRefused: z.int() }), ...refused },
        },
      },
      async ({ body }) => reread(body.ids, body.unit),
    );

    function messageOf(id: number): QuarantinedMessage {
      const message = store.quarantine.get(id);
      if (message) return message;
      throw new RefusalError({ code: 'record-unknown', reason: `There is no message ${id} in quarantine.` });
    }
  };

function shown({ arrivedMs, payload, ...message }: QuarantinedMessage) {
  return {
    ...message,
    payload: new TextDecoder().decode(payload),
    arrivedAt: isoOf(arrivedMs),
    whatToDo: refusals[message.code as RefusalCode].whatToDo,
  };
}
