/** The air outdoors by MQTT: one measured value, or a forecast as a list of points. */
import { z } from 'zod';
import { issuesOf, pathName, sentenceOf } from '../issues.ts';
import { instant } from '../model/index.ts';
import type { Refusal } from '../refusals.ts';
import type { Store } from '../store/store.ts';
import { readText } from './decoders/decodeReadings.ts';
import { isRefusal } from './decoders/decoder.ts';
import { parseNearJson } from './decoders/nearJson.ts';
import type { ArrivedMessage } from './message.ts';
import { clockOf } from './readings.ts';
import { type Result, refused } from './result.ts';
import { implausibleTime } from './time.ts';

const hourMs = 3_600_000;

const temperatureC = z
  .number({ error: 'send a number of °C' })
  .min(-60, { error: 'send at least -60' })
  .max(60, { error: 'send at most 60' });
const measured = z.strictObject({ temperatureC, time: instant.optional() });
const forecast = z.strictObject({
  issuedAt: instant.optional(),
  points: z
    .array(z.strictObject({ time: instant, temperatureC }))
    .min(1, { error: 'send at least one point' })
    .max(1000, { error: 'send at most 1000 points' }),
});

/** Stores what a message says of the air outdoors: `12.5`, `{ temperatureC, time? }` or `{ issuedAt?, points }`. */
export function storeOutdoor(store: Store, message: ArrivedMessage, placeId: string): Result {
  const text = readText(message.payload);
  if (typeof text !== 'string') return refused(placeId, text);
  const parsed = parseNearJson(text);
  if (isRefusal(parsed)) return refused(placeId, parsed);
  const sent = typeof parsed.value === 'number' ? { temperatureC: parsed.value } : parsed.value;
  const isForecast = typeof sent === 'object' && sent !== null && 'points' in sent;
  return isForecast
    ? storeForecast(store, message, placeId, sent)
    : storeMeasured(store, message, placeId, sent);
}

function storeForecast(store: Store, message: ArrivedMessage, placeId: string, sent: unknown): Result {
  const checked = forecast.safeParse(sent);
  if (!checked.success) return refused(placeId, invalid(checked.error, sent));
  const { issuedAt, points } = checked.data;
  if (issuedAt === undefined && message.retained && !message.live) return refused(placeId, ageless);
  const issuedMs = issuedAt === undefined ? message.arrivedMs : Date.parse(issuedAt);
  const implausible = implausibleTime(issuedMs, message.arrivedMs);
  if (implausible) return refused(placeId, implausible);
  const stored = points.map((point) => ({
    timeMs: Date.parse(point.time),
    temperatureC: point.temperatureC,
  }));
  store.outdoor.issue(placeId, issuedMs, stored);
  const readAs = `Weather forecast of ${clockOf(store, message, placeId)(issuedMs)}, ${points.length} points.`;
  return { placeId, readAs, changed: 'reading' };
}

/** One value an hour is kept, at its middle: the last one sent. */
function storeMeasured(store: Store, message: ArrivedMessage, placeId: string, sent: unknown): Result {
  const checked = measured.safeParse(sent);
  if (!checked.success) return refused(placeId, invalid(checked.error, sent));
  const { time } = checked.data;
  if (time === undefined && message.retained && !message.live) return refused(placeId, ageless);
  const timeMs = time === undefined ? message.arrivedMs : Date.parse(time);
  const implausible = implausibleTime(timeMs, message.arrivedMs);
  if (implausible) return refused(placeId, implausible);
  const middleMs = Math.floor(timeMs / hourMs) * hourMs + hourMs / 2;
  store.outdoor.add(placeId, [{ timeMs: middleMs, temperatureC: checked.data.temperatureC }]);
  const at = clockOf(store, message, placeId)(timeMs);
  return { placeId, readAs: `${checked.data.temperatureC} °C outdoors at ${at}.`, changed: 'reading' };
}

const ageless: Refusal = {
  code: 'retained-without-time',
  reason: 'The broker had kept this message, and it does not say from when it is.',
};

function invalid(error: z.ZodError, sent: unknown): Refusal {
  const issues = issuesOf(error, sent);
  return { code: 'record-invalid', reason: sentenceOf(issues, pathName), issues };
}
