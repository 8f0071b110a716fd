import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import {
  currencyOf,
  day,
  endOfSeason,
  heldRounds,
  localDay,
  pestId,
  quantiles,
  seasonsCompared,
} from '../../model/index.ts';
import { enteredSeason } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { notFound } from '../keeping.ts';
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

    const seasonOf = (placeId: string) => {
      const season = enteredSeason(store, placeId);
      if (!season) throw notFound({ kind: 'place', placeId, id: placeId });
      return season;
    };

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
        const season = seasonOf(placeId);
        return {
          seasons: seasonsCompared(season, keptOf(placeId), clock.nowMs()),
          currency: currencyOf(season.place),
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
        const season = seasonOf(placeId);
        const nowMs = clock.nowMs();
        return {
          seasonEnd: endOfSeason(season.place, localDay(nowMs, season.place.timeZone)),
          rounds: heldRounds(season, keptOf(placeId), nowMs),
        };
      },
    );
  };
