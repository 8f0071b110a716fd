import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { slug } from '../../model/index.ts';
import type { HourlyRollup, StoredReading } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import {
  arrivals,
  hourlyReadings,
  placePath,
  rawReadings,
  refused,
  temperature,
} from '../schemas/answers.ts';
import { pointsOf, type TemperaturePoint } from '../temperaturePoints.ts';
import { isoOf, windowOf, windowQuery } from '../window.ts';

const readingsQuery = windowQuery.extend({
  sensor: slug.optional(),
  resolution: z.enum(['raw', 'hour']).default('hour'),
});

/** What the sensors said, what became of it, and how each message was read. */
export const readingRoutes =
  ({ store, clock, season }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/places/:place/readings',
      {
        schema: {
          summary: 'Readings, one by one or by the hour; the last seven days when no window is named',
          params: placePath,
          querystring: readingsQuery,
          response: { 200: z.union([rawReadings, hourlyReadings]), ...refused },
        },
      },
      async ({ params, query }, reply) => {
        // To check each of a year's hours against the schema takes ten times as long as to write them; tests do it.
        reply.type('application/json; charset=utf-8').serializer(JSON.stringify);
        const { sensor: sensorId, resolution } = query;
        const window = { ...windowOf(query, clock.nowMs()), ...(sensorId === undefined ? {} : { sensorId }) };
        if (resolution === 'raw') {
          return { readings: (await store.readings.range(params.place, window)).map(shownReading) };
        }
        return { hours: (await store.readings.hourly(params.place, window)).map(shownHour) };
      },
    );

    app.get(
      '/places/:place/temperature',
      {
        schema: {
          summary:
            'The temperature as the forecast uses it, filled stretches marked, and what is not believed',
          params: placePath,
          querystring: windowQuery,
          response: { 200: temperature, ...refused },
        },
      },
      async ({ params, query }) => {
        const window = windowOf(query, clock.nowMs());
        const known = { ...window, toMs: Math.min(window.toMs, clock.nowMs()) };
        const curve = await season.temperature(store, params.place, known);
        const doubted = await store.readings.doubted(params.place, window);
        return {
          points: curve === undefined ? [] : pointsOf(curve, window).map(shownPoint),
          doubted: doubted.map(shownDoubt),
        };
      },
    );

    app.get(
      '/places/:place/arrivals',
      {
        schema: {
          summary: 'The last messages of a place, newest first, and how each was read',
          params: placePath,
          response: { 200: arrivals, ...refused },
        },
      },
      async ({ params }) => ({
        arrivals: store.arrivals.list(params.place).map(({ topic, arrivedMs, payloadStart, readAs }) => ({
          topic,
          arrivedAt: isoOf(arrivedMs),
          payloadStart,
          readAs,
        })),
      }),
    );
  };

const shownReading = ({ timeMs, ...reading }: StoredReading) => ({ ...reading, time: isoOf(timeMs) });
const shownHour = ({ hourMs, ...hour }: HourlyRollup) => ({ ...hour, hour: isoOf(hourMs) });
const shownPoint = ({ timeMs, ...point }: TemperaturePoint) => ({ ...point, time: isoOf(timeMs) });

const shownDoubt = ({ sensorId, timeMs, temperatureC, doubt = '' }: StoredReading) => {
  return { sensorId, time: isoOf(timeMs), temperatureC, doubt };
};
