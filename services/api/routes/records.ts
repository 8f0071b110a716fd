import type { FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { mayDo } from '../../access/door.ts';
import type { StoredRecord } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { current, keep, mayTakeBack, remove, shown, type Target, undo, versionsOf } from '../keeping.ts';
import { type Noun, nouns } from '../nouns.ts';
import { placePath, refused, stored } from '../schemas/answers.ts';
import { idFromKey, sameId } from '../writes.ts';

const recordPath = placePath.extend({ id: z.string().min(1).max(64) });

/** What the grower enters. One mechanism for all nouns: list, add, change, delete, history, undo. */
export const recordRoutes =
  (deps: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    for (const noun of nouns)
      await app.register(routesOf(noun, deps), { prefix: `/places/:place/${noun.path}` });
  };

const routesOf =
  (noun: Noun, deps: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const { schema: body, title } = noun;
    const { records } = deps.store;
    const record = stored(body);
    const answer = { 200: record, ...refused };
    const listed = {
      200: z.object({ records: z.array(record.extend({ mayUndo: z.boolean() })) }),
      ...refused,
    };
    const target = (placeId: string, id: string): Target<Noun['kind']> => ({ kind: noun.kind, placeId, id });
    const config = noun.ofARound ? { access: 'helper' as const } : {};
    /** With whether who asks may undo it, so that no page offers what would be refused. */
    const listedFor =
      ({ caller }: FastifyRequest) =>
      (each: StoredRecord<Noun['kind']>) => ({
        ...shown(each),
        mayUndo: mayDo(caller.role, config.access ?? 'owner') && mayTakeBack(caller, each),
      });

    app.get(
      '',
      {
        schema: {
          summary: `List ${title}`,
          params: placePath,
          response: listed,
        },
      },
      async (request) => ({
        records: records.list(noun.kind, request.params.place).map(listedFor(request)),
      }),
    );

    app.get(
      '/taken-back',
      {
        schema: {
          summary: `List ${title} that were taken back, the last one first; undo puts one back`,
          params: placePath,
          response: listed,
        },
      },
      async (request) => ({
        records: records.takenBack(noun.kind, request.params.place).map(listedFor(request)),
      }),
    );

    app.post(
      '',
      {
        config,
        preValidation: async (request) => fillId(request, noun, idFromKey(request)),
        schema: {
          summary: `Add to ${title}; an id that is in use gets a new version`,
          params: placePath,
          body,
          response: { 201: record, ...refused },
        },
      },
      async (request, reply) => {
        const kept = keep(
          deps,
          request,
          target(request.params.place, idOf(noun, request.body)),
          request.body,
        );
        return reply.code(201).send(kept);
      },
    );

    app.put(
      '/:id',
      {
        config,
        preValidation: async (request) => fillId(request, noun, request.params.id),
        schema: { summary: `Change one of ${title}`, params: recordPath, body, response: answer },
      },
      async (request) => {
        const { place, id } = request.params;
        sameId(noun.idField, id, idOf(noun, request.body));
        current(records, target(place, id));
        return keep(deps, request, target(place, id), request.body);
      },
    );

    app.delete(
      '/:id',
      {
        schema: { summary: `Delete one of ${title}; it can be undone`, params: recordPath, response: answer },
      },
      async (request) => remove(deps, request, target(request.params.place, request.params.id)),
    );

    app.get(
      '/:id/history',
      {
        schema: {
          summary: `All versions of one of ${title}, oldest first`,
          params: recordPath,
          response: { 200: z.object({ versions: z.array(record) }), ...refused },
        },
      },
      async ({ params }) => ({ versions: versionsOf(records, target(params.place, params.id)).map(shown) }),
    );

    app.post(
      '/:id/undo',
      { config, schema: { summary: 'Put back the version before', params: recordPath, response: answer } },
      async (request) => undo(deps, request, target(request.params.place, request.params.id)),
    );
  };

/** The data may leave its id out: a new one is made, or the one of the path is taken. */
function fillId(request: FastifyRequest, noun: Noun, id: string): void {
  const body = request.body;
  if (noun.idField === 'id' && typeof body === 'object' && body !== null && !('id' in body)) {
    request.body = { ...body, id };
  }
}

function idOf(noun: Noun, data: object): string {
  return String(Reflect.get(data, noun.idField));
}
