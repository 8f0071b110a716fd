import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import {
  day,
  endOfSeason,
  heldRounds,
  localDay,
  pestId,
  quantiles,
  type Season,
  seasonsCompared,
} from '../../model/index.ts';
import type { RecordKind } from '../../store/store.ts';
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

const beside = z.object({
  seasons: z.array(
    z.object({
      seasonEnd: day,
      pests: z.array(
        z.object({
          pest: pestId,
          firstSeen: day.optional(),
          rounds: z.array(z.number()),
          foretold: z.int(),
          inside: z.int(),
        }),
      ),
      releases: z.int(),
      treatments: z.int(),
      spent: z.number(),
      unpriced: z.int(),
    }),
  ),
  currency: z.string().optional(),
});

/** What was said before each count of the season, and what was counted; and this season beside earlier ones. */
export const seasonStoryRoutes =
  ({ store, clock }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const keptOf = (placeId: string) => ({
      times: store.issued.times(placeId),
      at: (asOfMs: number) => store.issued.at(placeId, asOfMs)?.forecast,
    });

    app.get(
      '/places/:place/seasons',
      {
        schema: {
          summary: 'Every season beside the others: first sightings, rounds, deeds, money, forecasts',
          params: placePath,
          response: { 200: beside, ...refused },
        },
      },
      async ({ params: { place: placeId } }) => {
        const { data: place } = current(store.records, { kind: 'place', placeId, id: placeId });
        const all = <K extends RecordKind>(kind: K) =>
          store.records.list(kind, placeId).map(({ data }) => data);
        const season: Season = {
          format: 'glasstide-season',
          version: 1,
          place,
          plantings: [],
          sensors: [],
          readings: [],
          dailyExtremes: [],
          traps: all('trap'),
          trapCounts: all('trapCount'),
          leafChecks: all('leafCheck'),
          sightings: all('sighting'),
          releases: all('release'),
          orders: all('order'),
          treatments: all('treatment'),
          outlook: [],
          outdoor: [],
        };
        return {
          seasons: seasonsCompared(season, keptOf(placeId), clock.nowMs()),
          ...(place.supplier && { currency: place.supplier.currency }),
        };
      },
    );

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
        const kept = keptOf(placeId);
        return {
          seasonEnd: endOfSeason(place, localDay(nowMs, place.timeZone)),
          rounds: heldRounds({ place, ...counts }, kept, nowMs),
        };
      },
    );
  };
