import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { type Season, seasonSchema } from '../../model/index.ts';
import { RefusalError } from '../../refusals.ts';
import type { ApiDeps } from '../deps.ts';
import { announce, current } from '../keeping.ts';
import { placePath, refused } from '../schemas/answers.ts';

const imported = z.object({ placeId: z.string(), imported: z.record(z.string(), z.int()) });
const largestFileBytes = 64 * 1024 * 1024;

/** The season file: everything entered and measured in one place, out and in again. */
export const seasonRoutes =
  (deps: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const { store, season, clock } = deps;

    app.get(
      '/places/:place/season',
      {
        schema: {
          summary: 'Take everything out as a season file',
          params: placePath,
          response: { 200: seasonSchema, ...refused },
        },
      },
      async ({ params }, reply) => {
        current(store.records, { kind: 'place', placeId: params.place, id: params.place });
        reply.header('content-disposition', `attachment; filename="${params.place}.season.json"`);
        return season.assemble(store, params.place, clock.nowMs());
      },
    );

    app.post(
      '/season',
      {
        bodyLimit: largestFileBytes,
        schema: {
          summary: 'Bring a season file in',
          querystring: z.object({ replace: z.stringbool().default(false) }),
          body: seasonSchema,
          response: { 200: imported, ...refused },
        },
      },
      async ({ body, query }) => {
        const placeId = body.place.id;
        const present = store.records.get('place', placeId, placeId);
        if (present && !query.replace) {
          throw new RefusalError({
            code: 'place-exists',
            reason: `There is a place ${placeId} already. The file was not brought in.`,
          });
        }
        await season.import(store, body, { replace: query.replace, atMs: clock.nowMs() });
        announce(deps, placeId);
        return { placeId, imported: countsOf(body) };
      },
    );

    app.get(
      '/schema/season',
      {
        schema: {
          summary: 'JSON Schema of the season file',
          response: { 200: z.record(z.string(), z.unknown()), ...refused },
        },
      },
      async () => z.toJSONSchema(seasonSchema, { io: 'input' }),
    );
  };

/** How many entries of each kind a file holds. */
function countsOf(season: Season): Record<string, number> {
  return Object.fromEntries(
    Object.entries(season).flatMap(([name, entries]) =>
      Array.isArray(entries) ? [[name, entries.length]] : [],
    ),
  );
}
