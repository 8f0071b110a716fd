import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import type { IssuedForecast } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { issuedList, outcome, placePath, refused } from '../schemas/answers.ts';
import { isoOf } from '../window.ts';

/** The forecast and the advice of a place, as last issued, and the list of all that were issued. */
export const outcomeRoutes =
  ({ store, forecastNow }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const answer = { 200: outcome, ...refused };

    app.get(
      '/places/:place/outcome',
      {
        schema: {
          summary: 'The latest forecast and advice; null before the first, which follows the first entry',
          params: placePath,
          response: { 200: outcome.nullable(), ...refused },
        },
      },
      async ({ params }) => {
        const latest = store.issued.latest(params.place);
        return latest ? shown(latest) : null;
      },
    );

    app.post(
      '/places/:place/outcome',
      { schema: { summary: 'Work out forecast and advice now', params: placePath, response: answer } },
      async ({ params }) => shown(await forecastNow(params.place)),
    );

    app.get(
      '/places/:place/issued',
      {
        schema: {
          summary: 'All issued advice, as it was given',
          params: placePath,
          response: { 200: issuedList, ...refused },
        },
      },
      async ({ params }) => ({
        issued: store.issued.list(params.place).map(({ asOfMs, advice }) => ({
          asOf: isoOf(asOfMs),
          decision: advice.decision,
          sentence: advice.sentence,
        })),
      }),
    );
  };

const shown = ({ asOfMs, forecast, advice }: IssuedForecast) => ({
  issuedAt: isoOf(asOfMs),
  forecast,
  advice,
});
