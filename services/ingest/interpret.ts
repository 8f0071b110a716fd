/** One message, by its topic, to the one that understands it. */

import type { Sensor, TemperatureUnit } from '../model/index.ts';
import { type Refusal, refusals } from '../refusals.ts';
import type { Store } from '../store/store.ts';
import { readText } from './decoders/decodeReadings.ts';
import { isRefusal } from './decoders/decoder.ts';
import type { Marks } from './marks.ts';
import type { ArrivedMessage } from './message.ts';
import { storeOutdoor } from './outdoor.ts';
import { storeReadings } from './readings.ts';
import { storeLeafCheck, storeTrapCount } from './records.ts';
import { type Result, refused } from './result.ts';
import { parseTopic, type TopicMeaning, topicMatches } from './topics.ts';

const largestPayloadBytes = 64 * 1024;

/**
 * Stores what a message says and answers what became of it, once for each place or sensor that it
 * speaks to. With `unit` the owner says in which unit its sensors speak; that is kept.
 */
export async function interpret(
  room: { store: Store; marks: Marks },
  message: ArrivedMessage,
  unit?: TemperatureUnit,
): Promise<Result[]> {
  const { store } = room;
  const meaning = parseTopic(message.topic);
  if (!isRefusal(meaning)) {
    const result = await interpretOwn(room, message, meaning, unit);
    return result ? [result] : [];
  }
  const mapped = mappedSensors(store).filter(({ sensor }) => topicMatches(sensor.topic, message.topic));
  if (mapped.length === 0) return [refused(undefined, meaning)];
  return Promise.all(
    mapped.map(({ placeId, sensor }) => interpretReading(room, message, placeId, sensor, unit)),
  );
}

/** The place in a topic, when it is set up. */
export function placeNamed(store: Store, topic: string): string | undefined {
  const meaning = parseTopic(topic);
  if (isRefusal(meaning)) return undefined;
  return store.records.get('place', meaning.placeId, meaning.placeId)?.placeId;
}

/** Sensors that publish on topics of their own. */
export function mappedSensors(store: Store): { placeId: string; sensor: Sensor & { topic: string } }[] {
  return store.records.places().flatMap(({ placeId }) =>
    store.records.list('sensor', placeId).flatMap(({ data }) => {
      return data.topic === undefined ? [] : [{ placeId, sensor: { ...data, topic: data.topic } }];
    }),
  );
}

async function interpretOwn(
  room: { store: Store; marks: Marks },
  message: ArrivedMessage,
  meaning: TopicMeaning,
  unit: TemperatureUnit | undefined,
): Promise<Result | undefined> {
  const { store } = room;
  const { placeId } = meaning;
  const clearsRetained = message.retained && message.payloadBytes === 0;
  if (meaning.kind === 'outgoing' || clearsRetained) return undefined;
  if (!store.records.get('place', placeId, placeId)) return refused(undefined, unknownPlace(placeId));
  const large = tooLarge(message);
  if (large) return refused(placeId, large);
  switch (meaning.kind) {
    case 'reading':
      return interpretReading(room, message, placeId, sensorOf(store, message, meaning), unit);
    case 'count':
      return storeTrapCount(store, message, placeId, meaning.trapId);
    case 'leaves':
      return storeLeafCheck(store, message, placeId);
    case 'outdoor':
      return storeOutdoor(store, message, placeId);
    case 'health':
      return health(message, placeId);
  }
}

async function interpretReading(
  { store, marks }: { store: Store; marks: Marks },
  message: ArrivedMessage,
  placeId: string,
  sensor: Sensor,
  unit: TemperatureUnit | undefined,
): Promise<Result> {
  const large = tooLarge(message);
  if (large) return refused(placeId, large);
  const spoken = unit === undefined ? sensor : withUnit(store, message, placeId, sensor, unit);
  const target = { placeId, sensor: spoken, unitKnown: unit !== undefined };
  const { stored, ...result } = await storeReadings(store, message, target);
  const times = stored.map(({ timeMs }) => timeMs);
  if (times.length > 0) marks.look(placeId, { fromMs: Math.min(...times), toMs: Math.max(...times) });
  return result;
}

/** A sensor that nobody has set up yet is set up by its first reading. */
function sensorOf(
  store: Store,
  message: ArrivedMessage,
  { placeId, sensorId }: { placeId: string; sensorId: string },
): Sensor {
  const known = store.records.get('sensor', placeId, sensorId);
  if (known) return known.data;
  const data: Sensor = { id: sensorId, name: sensorId, unit: 'Cel' };
  store.records.put({ kind: 'sensor', placeId, id: sensorId, data, atMs: message.arrivedMs });
  return data;
}

function withUnit(
  store: Store,
  { arrivedMs }: ArrivedMessage,
  placeId: string,
  sensor: Sensor,
  unit: TemperatureUnit,
): Sensor {
  const data = { ...sensor, unit };
  if (sensor.unit !== unit)
    store.records.put({ kind: 'sensor', placeId, id: sensor.id, data, atMs: arrivedMs });
  return data;
}

/** The Last Will of a sensor that sleeps cries "offline" each time: noted, never believed. */
function health(message: ArrivedMessage, placeId: string): Result {
  const text = readText(message.payload);
  if (text === 'online' || text === 'offline')
    return { placeId, readAs: `Says it is ${text}: taken as a hint.` };
  const received = typeof text === 'string' ? text.slice(0, 60) : 'no text';
  return refused(placeId, {
    code: 'payload-unreadable',
    reason: `The health of a sensor came as ${received}. Send online or offline.`,
    issues: [{ path: '', expected: 'send online or offline', received }],
  });
}

function tooLarge({ payloadBytes }: ArrivedMessage): Refusal | undefined {
  if (payloadBytes <= largestPayloadBytes) return undefined;
  return {
    code: 'payload-too-large',
    reason: `The message has ${payloadBytes} bytes. ${refusals['payload-too-large'].whatToDo}`,
    issues: [
      { path: '', expected: `send at most ${largestPayloadBytes} bytes`, received: `${payloadBytes} bytes` },
    ],
  };
}

function unknownPlace(placeId: string): Refusal {
  return {
    code: 'topic-unknown-place',
    reason: `There is no place ${placeId}. ${refusals['topic-unknown-place'].whatToDo}`,
    issues: [{ path: 'place', expected: 'name a place that is set up', received: placeId }],
  };
}
