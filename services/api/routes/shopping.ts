import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import {
  currencyOf,
  localDay,
  openOrders,
  parcelWords,
  priceHistory,
  type Season,
  shoppingList,
  spending,
} from '../../model/index.ts';
import type { RecordKind } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { current } from '../keeping.ts';
import { placePath, refused } from '../schemas/answers.ts';
import { shopping } from '../schemas/shopping.ts';

/** What to order by when, what is on the way, what it cost before. */
export const shoppingRoutes =
  ({ store, clock }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/places/:place/shopping',
      {
        schema: {
          summary: 'Parcels to order, orders on the way, prices and sums',
          params: placePath,
          response: { 200: shopping, ...refused },
        },
      },
      async ({ params: { place: placeId } }) => {
        const { data: place } = current(store.records, { kind: 'place', placeId, id: placeId });
        const all = <K extends RecordKind>(kind: K) => store.records.list(kind, placeId).map((r) => r.data);
        const [orders, releases] = [all('order'), all('release')];
        const nowMs = clock.nowMs();
        const lists = store.records.history('place', placeId, placeId).map(({ changedAtMs, data }) => ({
          day: localDay(changedAtMs, place.timeZone),
          prices: data.supplier?.pricePerAnimal ?? {},
        }));
        const season: Pick<Season, 'place' | 'orders' | 'releases'> = { place, orders, releases };
        return {
          parcels: shoppingList(place, store.issued.latest(placeId)?.advice.toOrder ?? []),
          onTheWay: openOrders(season, nowMs).map((order) => ({ ...order, words: parcelWords(order) })),
          prices: priceHistory(place, orders, lists),
          ...spending(place, season, nowMs),
          currency: currencyOf(place),
        };
      },
    );
  };
