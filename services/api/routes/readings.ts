import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { slug, type TemperatureCurve, temperatureCurve } from '../../model/index.ts';
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
      async ({ params, query }) => {
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
        const inputs = await season.assemble(store, params.place, Math.min(window.toMs, clock.nowMs()));
        const curve = temperatureCurve(inputs, Math.min(window.toMs, clock.nowMs()));
        const stored = await store.readings.range(params.place, window);
        return {
          points: curve === undefined ? [] : pointsOf(curve, window).map(shownPoint),
          doubted: doubtedOf(stored, curve?.doubted ?? []),
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

/** Readings not believed, whether on arrival or when the curve was drawn. */
function doubtedOf(stored: readonly StoredReading[], found: TemperatureCurve['doubted']) {
  const key = (sensorId: string, timeMs: number) => `${sensorId} ${timeMs}`;
  const later = new Map(found.map(({ sensorId, timeMs, doubt }) => [key(sensorId, timeMs), doubt]));
  return stored.flatMap(({ sensorId, timeMs, temperatureC, doubt }) => {
    const why = doubt ?? later.get(key(sensorId, timeMs));
    return why === undefined ? [] : [{ sensorId, time: isoOf(timeMs), temperatureC, doubt: why }];
  });
}
