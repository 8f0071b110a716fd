import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { day, endOfSeason, heldRounds, localDay, pestId, quantiles } from '../../model/index.ts';
import type { ApiDeps } from '../deps.ts';
import { current } from '../keeping.ts';
import { instant, placePath, refused } from '../schemas/answers.ts';

const held = z.object({
  seasonEnd: day,
  rounds: z.array(
    z.object({
      pest: pestId,
      time: instant,
      counts: z.array(z.number()),
      said: z.object({ asOf: instant, count: quantiles }).optional(),
      last: z.number().optional(),
    }),
  ),
});

/** What was said before each count of the season, and what was counted. */
export const seasonStoryRoutes =
  ({ store, clock }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/places/:place/held',
      {
        schema: {
          summary: 'Each round of counts of this season against the forecast kept about a week before',
          params: placePath,
          response: { 200: held, ...refused },
        },
      },
      async ({ params: { place: placeId } }) => {
        const { data: place } = current(store.records, { kind: 'place', placeId, id: placeId });
        const all = <K extends 'trap' | 'trapCount' | 'leafCheck'>(kind: K) =>
          store.records.list(kind, placeId).map(({ data }) => data);
        const counts = { traps: all('trap'), trapCounts: all('trapCount'), leafChecks: all('leafCheck') };
        const nowMs = clock.nowMs();
        const kept = {
          times: store.issued.times(placeId),
          at: (asOfMs: number) => store.issued.at(placeId, asOfMs)?.forecast,
        };
        return {
          seasonEnd: endOfSeason(place, localDay(nowMs, place.timeZone)),
          rounds: heldRounds({ place, ...counts }, kept, nowMs),
        };
      },
    );
  };
