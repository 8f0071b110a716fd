import { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { instant, type Season, seasonSchema } from '../../model/index.ts';
import type { ApiDeps } from '../deps.ts';
import { current } from '../keeping.ts';
import { answeringOnce } from '../once.ts';
import { placePath, refused } from '../schemas/answers.ts';

const imported = z.object({ placeId: z.string(), imported: z.record(z.string(), z.int()) });
const largestFileBytes = 64 * 1024 * 1024;

/** The season file: everything entered and measured in one place, out and in again. */
export const seasonRoutes =
  ({ store, season, clock, changes }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const once = answeringOnce({ store, clock });
    app.get(
      '/places/:place/season',
      {
        schema: {
          summary: 'Take everything out as a season file; with `asOf`, what a forecast of that instant reads',
          params: placePath,
          querystring: z.object({ asOf: instant.optional() }),
          response: { 200: seasonSchema, ...refused },
        },
      },
      async ({ params, query }, reply) => {
        current(store.records, { kind: 'place', placeId: params.place, id: params.place });
        if (query.asOf !== undefined) {
          reply.type('application/json; charset=utf-8').serializer(JSON.stringify);
          return season.asRead(store, params.place, Date.parse(query.asOf));
        }
        reply.header('content-disposition', `attachment; filename="${params.place}.season.json"`);
        return stream(reply, 'application/json; charset=utf-8', season.text(store, params.place));
      },
    );

    app.get(
      '/places/:place/readings.csv',
      { schema: { summary: 'Take all readings out as CSV (RFC 4180)', params: placePath } },
      async ({ params }, reply) => {
        current(store.records, { kind: 'place', placeId: params.place, id: params.place });
        reply.header('content-disposition', `attachment; filename="${params.place}.readings.csv"`);
        return stream(reply, 'text/csv; charset=utf-8; header=present', season.csv(store, params.place));
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
      async (request) => {
        const { body, query } = request;
        return once(request, async () => {
          await season.import(store, body, { replace: query.replace, atMs: clock.nowMs() });
          const placeId = body.place.id;
          changes.tell({ placeId, what: 'record' });
          return { placeId, imported: countsOf(body) };
        });
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
      async () => ({ ...season.jsonSchema() }),
    );
  };

/** Sent piece by piece as it is made; a stream is not checked against the schema, which its tests do. */
function stream(reply: FastifyReply, type: string, parts: AsyncIterable<string>): never {
  return reply.type(type).send(Readable.from(parts)) as never;
}

/** How many entries of each kind a file holds. */
function countsOf(season: Season): Record<string, number> {
  return Object.fromEntries(
    Object.entries(season).flatMap(([name, entries]) =>
      Array.isArray(entries) ? [[name, entries.length]] : [],
    ),
  );
}
