/** Shapes the API answers with, beside those of the model. */
import { z } from 'zod';
import { adviceSchema, decision, forecastSchema, place, slug } from '../../model/index.ts';

/** As this machine's clock told it, which may never have been set. */
export const instant = z.iso.datetime({ offset: true });

export const refusal = z
  .object({
    code: z.string(),
    reason: z.string(),
    whatToDo: z.string(),
    issues: z.array(z.object({ path: z.string(), expected: z.string(), received: z.string() })),
  })
  .meta({ description: 'Refused. Each code is explained in docs/errors.md.' });

/** Spread into the responses of every route. */
export const refused = { '4xx': refusal, '5xx': refusal };

export const placePath = z.object({ place: slug });

export const health = z.object({
  status: z.enum(['well', 'unwell']),
  reasons: z.array(z.string()),
  now: instant,
  demo: z.boolean(),
  version: z.string(),
});

export const places = z.object({ places: z.array(place) });

/** A record as kept: its data, which version this is, and whether it was deleted. */
export const stored = <T extends z.ZodType>(data: T) =>
  z.object({ id: z.string(), version: z.int(), changedAt: instant, deleted: z.boolean(), data });

export const rawReadings = z.object({
  readings: z.array(
    z.object({
      sensorId: slug,
      time: instant,
      temperatureC: z.number(),
      humidityPct: z.number().optional(),
      doubt: z.string().optional(),
    }),
  ),
});
export const hourlyReadings = z.object({
  hours: z.array(
    z.object({
      sensorId: slug,
      hour: instant,
      count: z.int(),
      meanC: z.number(),
      minC: z.number(),
      maxC: z.number(),
      doubted: z.int(),
    }),
  ),
});
export const temperature = z.object({
  points: z.array(
    z.object({
      time: instant,
      temperatureC: z.number(),
      filledBy: z.enum(['other-sensor', 'daily-extremes', 'diurnal-curve']).optional(),
    }),
  ),
  doubted: z.array(z.object({ sensorId: slug, time: instant, temperatureC: z.number(), doubt: z.string() })),
});
export const arrivals = z.object({
  arrivals: z.array(
    z.object({ topic: z.string(), arrivedAt: instant, payloadStart: z.string(), readAs: z.string() }),
  ),
});

export const quarantinedMessage = z.object({
  id: z.int(),
  placeId: z.string().optional(),
  topic: z.string(),
  payload: z.string().meta({ description: 'The first 4 kB as text.' }),
  payloadBytes: z.int(),
  retained: z.boolean(),
  arrivedAt: instant,
  code: z.string(),
  reason: z.string(),
  whatToDo: z.string(),
  settled: z.enum(['mended', 'dismissed']).optional(),
});

export const outcome = z.object({ issuedAt: instant, forecast: forecastSchema, advice: adviceSchema });
export const issuedList = z.object({
  issued: z.array(z.object({ asOf: instant, decision, sentence: z.string() })),
});

export const warning = z.object({
  id: z.string(),
  rule: z.string(),
  raisedAt: instant,
  deadline: instant,
  text: z.string(),
  reason: z.string(),
  ends: z.string(),
  urgent: z.boolean(),
  state: z.enum(['open', 'put-off', 'closed', 'done', 'withdrawn']),
  putOffUntil: instant.optional(),
  ended: z.string().optional(),
});
