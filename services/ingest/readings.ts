/** From a payload to readings in the store. */
import { createHash } from 'node:crypto';
import { doubtWords, findDoubts, type Sensor } from '../model/index.ts';
import { type Refusal, refusals } from '../refusals.ts';
import type { Added, Arrival, Delivery, Store, StoredReading } from '../store/store.ts';
import { decodeReadings } from './decoders/decodeReadings.ts';
import { type Decoded, type DecodedReading, isRefusal } from './decoders/decoder.ts';
import type { ArrivedMessage } from './message.ts';
import { type Result, refused } from './result.ts';
import { implausibleTime, localWords } from './time.ts';
import { looksLikeFahrenheit, suspiciousFrom } from './unitDoubt.ts';

const hourMs = 3_600_000;
/** As much of a payload as the page of arrivals shows. */
export const shownPayloadLength = 120;

export interface ReadingTarget {
  placeId: string;
  sensor: Sensor;
  /** The owner has said which unit this is: nothing to suspect. */
  unitKnown: boolean;
}

/** Stores what can be used; resolves after it is on disk. What cannot be used is named in the result. */
export async function storeReadings(
  store: Store,
  message: ArrivedMessage,
  target: ReadingTarget,
): Promise<Result & { stored: StoredReading[] }> {
  const { placeId, sensor } = target;
  const decoded = decodeReadings(message.payload, { ...sensor, arrivedMs: message.arrivedMs });
  if (isRefusal(decoded)) return { ...refused(placeId, decoded), stored: [] };
  const timeZone = timeZoneOf(store, placeId);
  const { usable, refusal } = await judge(store, message, { ...target, timeZone }, decoded);
  if (usable.length === 0) return { ...refused(placeId, refusal ?? noTemperature), stored: [] };
  const left = refusal ? ` Not used: ${refusal.reason}` : '';
  let readAs = '';
  const told = (added: Added) => {
    readAs = describe(usable, added, decoded, clockIn(timeZone, message)) + left;
    return readAs;
  };
  const delivery = deliveryOf(message, sensor.id, decoded);
  const added = await store.readings.add(placeId, usable, {
    arrival: (known) => arrivalOf(message, placeId, told(known)),
    ...(delivery && { delivery }),
  });
  return {
    placeId,
    readAs,
    noted: true,
    stored: added.deliveredBefore ? [] : usable,
    ...(added.stored > 0 && { changed: 'reading' as const }),
    ...(refusal && { refusal }),
  };
}

/** MQTT allows a second delivery; without a time of its own the same reading would count twice. */
function deliveryOf(message: ArrivedMessage, sensorId: string, { readings }: Decoded): Delivery | undefined {
  if (!message.delivery || readings.every(({ timeFrom }) => timeFrom === 'board')) return undefined;
  const { topic, payload, arrivedMs, duplicate } = message;
  const content = createHash('sha256').update(`${topic} `).update(payload).digest('base64');
  return { ...message.delivery, sensorId, content, arrivedMs, again: duplicate };
}

export function arrivalOf(
  { topic, arrivedMs, payload }: ArrivedMessage,
  placeId: string,
  readAs: string,
): Arrival {
  return { placeId, topic, arrivedMs, payloadStart: payloadStart(payload), readAs };
}

async function judge(
  store: Store,
  message: ArrivedMessage,
  target: ReadingTarget & { timeZone: string },
  decoded: Decoded,
) {
  const usable: StoredReading[] = [];
  let refusal: Refusal | undefined;
  for (const reading of decoded.readings) {
    const found = await refusalOf(store, message, target, decoded, reading);
    if (found) refusal ??= found;
    else usable.push(toStore(reading, target.sensor.id));
  }
  return { usable, refusal };
}

async function refusalOf(
  store: Store,
  message: ArrivedMessage,
  { placeId, sensor, unitKnown, timeZone }: ReadingTarget & { timeZone: string },
  { unitStated }: Decoded,
  reading: DecodedReading,
): Promise<Refusal | undefined> {
  const { temperatureC, timeMs, timeFrom } = reading;
  if (temperatureC === undefined) return noTemperature;
  if (!Number.isFinite(temperatureC)) return tooLargeForNumbers;
  if (timeFrom === 'arrival' && message.retained && !message.live) return retainedGhost;
  const implausible = implausibleTime(timeMs, message.arrivedMs, timeZone);
  if (implausible || unitStated || unitKnown || sensor.unit !== 'Cel' || temperatureC <= suspiciousFrom)
    return implausible;
  const known = await store.readings.range(placeId, {
    fromMs: timeMs - 6 * hourMs,
    toMs: timeMs + 6 * hourMs,
  });
  const doubtful = looksLikeFahrenheit({ sensorId: sensor.id, timeMs, temperatureC }, known);
  return doubtful ? fahrenheit(sensor, temperatureC) : undefined;
}

function toStore(reading: DecodedReading, sensorId: string): StoredReading {
  const { temperatureC = Number.NaN, humidityPct, timeMs } = reading;
  const stored = { sensorId, timeMs: Math.round(timeMs), temperatureC };
  const doubt = findDoubts([stored])[0]?.doubt;
  const humid = humidityPct !== undefined && humidityPct >= 0 && humidityPct <= 100;
  return { ...stored, ...(humid && { humidityPct }), ...(doubt && { doubt }) };
}

const timeZoneOf = (store: Store, placeId: string): string =>
  store.records.get('place', placeId, placeId)?.data.timeZone ?? 'UTC';

/** Words for an instant on the clock of the place. */
export const clockOf = (store: Store, message: ArrivedMessage, placeId: string) =>
  clockIn(timeZoneOf(store, placeId), message);

const clockIn =
  (timeZone: string, { arrivedMs }: ArrivedMessage) =>
  (timeMs: number) =>
    localWords(timeMs, timeZone, arrivedMs);

function describe(
  readings: readonly StoredReading[],
  added: Added,
  { notes, readings: all }: Decoded,
  at: (timeMs: number) => string,
): string {
  const [first] = readings;
  if (!first) return '';
  if (added.deliveredBefore) return 'Sent again by the board: stored once.';
  const humidity = first.humidityPct === undefined ? '' : ` and ${first.humidityPct} % humidity`;
  const from = all[0]?.timeFrom === 'board' ? "by the board's clock" : 'when it came';
  const text =
    readings.length === 1
      ? `${first.temperatureC} °C${humidity}, ${at(first.timeMs)} (${from})`
      : `${readings.length} readings from ${at(first.timeMs)} on`;
  const known = added.duplicates > 0 ? [`${added.duplicates} known already`] : [];
  const conflicts = added.conflicts.length > 0 ? ['another value is in use for that time'] : [];
  const doubts = first.doubt ? ` Not believed: ${doubtWords(first.doubt)}` : '';
  return `${[text, ...notes, ...known, ...conflicts].join('; ')}.${doubts}`;
}

const utf8 = new TextDecoder();

export function payloadStart(payload: Uint8Array): string {
  return utf8.decode(payload.subarray(0, shownPayloadLength));
}

const noTemperature: Refusal = {
  code: 'value-missing',
  reason: `No temperature came. ${refusals['value-missing'].whatToDo}`,
  issues: [{ path: 'temperatureC', expected: 'send a number such as 19.4', received: 'nothing' }],
};

/** 1e308 °F or K: the scale of the sensor takes it beyond the largest number there is. */
const tooLargeForNumbers: Refusal = {
  code: 'value-not-finite',
  reason: `The temperature is larger than any number. ${refusals['value-not-finite'].whatToDo}`,
};

const retainedGhost: Refusal = {
  code: 'retained-without-time',
  reason: `The broker had kept this message, and it does not say when it was measured. ${refusals['retained-without-time'].whatToDo}`,
};

function fahrenheit({ id }: Sensor, temperature: number): Refusal {
  return {
    code: 'unit-doubtful',
    reason: `${id} sent ${temperature}: far too warm in °C, usual in °F. ${refusals['unit-doubtful'].whatToDo}`,
    issues: [
      { path: 'temperatureC', expected: 'say °C or °F for this sensor', received: String(temperature) },
    ],
  };
}
