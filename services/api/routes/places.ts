import { isDeepStrictEqual } from 'node:util';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { place } from '../../model/index.ts';
import { RefusalError } from '../../refusals.ts';
import type { ApiDeps } from '../deps.ts';
import { current, keep, remove, shown, type Target, undo, versionsOf } from '../keeping.ts';
import { placePath, places, refused, stored } from '../schemas/answers.ts';
import { sameId } from '../writes.ts';

const target = (id: string): Target<'place'> => ({ kind: 'place', placeId: id, id });

/** Places: each with its own climate and time zone; everything else belongs to one. */
export const placeRoutes =
  (deps: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const { records } = deps.store;
    const answer = { 200: stored(place), ...refused };

    app.get(
      '/places',
      { schema: { summary: 'List the places', response: { 200: places, ...refused } } },
      async () => ({ places: records.places().map((record) => record.data) }),
    );

    app.post(
      '/places',
      { schema: { summary: 'Add a place', body: place, response: { 201: stored(place), ...refused } } },
      async (request, reply) => {
        const data = request.body;
        const present = records.get('place', data.id, data.id);
        const sameAgain = present && isDeepStrictEqual(present.data, data);
        if (sameAgain) return reply.code(201).send(shown(present));
        if (present) {
          throw new RefusalError({
            code: 'place-exists',
            reason: `There is a place ${data.id} already; it stays as it is.`,
          });
        }
        return reply.code(201).send(keep(deps, request, target(data.id), data));
      },
    );

    app.get(
      '/places/:place',
      { schema: { summary: 'Read a place', params: placePath, response: answer } },
      async (request) => shown(current(records, target(request.params.place))),
    );

    app.put(
      '/places/:place',
      { schema: { summary: 'Change a place', params: placePath, body: place, response: answer } },
      async (request) => {
        sameId('id', request.params.place, request.body.id);
        current(records, target(request.params.place));
        return keep(deps, request, target(request.params.place), request.body);
      },
    );

    app.delete(
      '/places/:place',
      { schema: { summary: 'Delete a place (its history stays)', params: placePath, response: answer } },
      async (request) => remove(deps, request, target(request.params.place)),
    );

    app.get(
      '/places/:place/history',
      {
        schema: {
          summary: 'All versions of a place, oldest first',
          params: placePath,
          response: { 200: z.object({ versions: z.array(stored(place)) }), ...refused },
        },
      },
      async ({ params }) => ({ versions: versionsOf(records, target(params.place)).map(shown) }),
    );

    app.post(
      '/places/:place/undo',
      { schema: { summary: 'Put back the version before', params: placePath, response: answer } },
      async (request) => undo(deps, request, target(request.params.place)),
    );
  };
