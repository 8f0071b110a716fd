import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';

import { outdoorSource } from '../../outdoorSource.ts';
import type { ApiDeps } from '../deps.ts';
import { current } from '../keeping.ts';
import { instant, placePath, refused } from '../schemas/answers.ts';
import { isoOf } from '../window.ts';

const state = z.object({
  source: outdoorSource.optional(),
  /** When the newest forecast was issued. */
  issuedAt: instant.optional(),
  /** Why the last fetch brought nothing. */
  trouble: z.string().optional(),
});

/** Where the forecast of the air outdoors is fetched, and how that goes. For the owner: an address may hold a key. */
export const outdoorRoutes =
  ({ store, clock, outdoor }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const answer = { 200: state, ...refused };
    const path = '/places/:place/outdoor';

    app.get(
      path,
      {
        config: { access: 'owner' },
        schema: { summary: 'Where the weather forecast comes from', params: placePath, response: answer },
      },
      async ({ params }) => shown(params.place),
    );

    app.put(
      path,
      {
        config: { access: 'owner' },
        schema: {
          summary: 'Set the address and the pointers, and fetch at once',
          params: placePath,
          body: outdoorSource,
          response: answer,
        },
      },
      async ({ params: { place: placeId }, body }) => {
        current(store.records, { kind: 'place', placeId, id: placeId });
        const { list, ...pointers } = body.pointers;
        store.outdoor.keepSource(placeId, {
          ...body,
          pointers: list === undefined ? pointers : { ...pointers, list },
        });
        outdoor.afresh(placeId);
        await outdoor.now(placeId);
        return shown(placeId);
      },
    );

    app.delete(
      path,
      {
        config: { access: 'owner' },
        schema: { summary: 'Fetch no weather forecast any more', params: placePath, response: answer },
      },
      async ({ params: { place: placeId } }) => {
        store.outdoor.keepSource(placeId, undefined);
        outdoor.afresh(placeId);
        return shown(placeId);
      },
    );

    function shown(placeId: string): z.infer<typeof state> {
      current(store.records, { kind: 'place', placeId, id: placeId });
      const source = store.outdoor.source(placeId);
      const issuedMs = store.outdoor.lastIssuedMs(placeId);
      const trouble = outdoor.troubleOf(placeId);
      return {
        ...(source && { source }),
        ...(issuedMs !== undefined && issuedMs <= clock.nowMs() && { issuedAt: isoOf(issuedMs) }),
        ...(trouble !== undefined && { trouble }),
      };
    }
  };
