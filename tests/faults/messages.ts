/**
 * What the boards of the fault suite send, drawn from a seed, and what must be found of each message afterwards.
 * Every message differs from every other one, so that each can be looked for by itself.
 */
import { seeded } from '../../services/model/numerics/random.ts';

export type Kind =
  /** A reading with its own time: sensor and time tell it apart. */
  | 'timed'
  /** A reading without: only its value, which no other message carries, tells it apart. */
  | 'untimed'
  /** A timed reading once more, as a new message. */
  | 'repeated'
  | 'count'
  /** Nothing that could be read. */
  | 'garbage';

export interface SentMessage {
  kind: Kind;
  topic: string;
  payload: string;
  /** Under which it must be found: once for all messages with the same key. */
  key: string;
  retain: boolean;
}

const stepMs = 10 * 60_000;
const sensorsPerPlace = 4;

export const placeOf = (board: number) => `house-${board}`;
export const trapId = 'door';
export const readingKey = (placeId: string, sensorId: string, timeMs: number, temperatureC: number) =>
  `${placeId} ${sensorId} ${timeMs} ${temperatureC}`;
export const untimedKey = (placeId: string, temperatureC: number) => `${placeId} untimed ${temperatureC}`;
export const countKey = (placeId: string, id: string) => `${placeId} count ${id}`;
export const garbageKey = (topic: string, payload: string) => `${topic} ${payload}`;

/** Sensors that never send a time; one message of each is on its way at a time, as with a real board. */
export const untimedSensors = ['loose-0', 'loose-1', 'loose-2', 'loose-3'];

/** Messages with times, counts and garbage of one board, in blocks out of order. */
export function* mixedMessages(
  board: number,
  count: number,
  lastMs: number,
  seed: number,
): Generator<SentMessage> {
  const random = seeded(1000 * seed + board);
  const placeId = placeOf(board);
  const sent: SentMessage[] = [];
  for (let start = 0; start < count; start += 64) {
    const block = Array.from({ length: Math.min(64, count - start) }, (_, i) => {
      const message = mixedMessage(placeId, start + i, lastMs, random, sent);
      if (message.kind === 'timed') sent[(start + i) % 500] = message;
      return { message, rank: random() };
    });
    for (const { message } of block.sort((a, b) => a.rank - b.rank)) yield message;
  }
}

function mixedMessage(
  placeId: string,
  index: number,
  lastMs: number,
  random: () => number,
  sent: SentMessage[],
): SentMessage {
  const chance = random();
  const retain = random() < 0.02;
  if (chance < 0.008) return garbage(placeId, index, retain);
  if (chance < 0.01) return trapCount(placeId, index, lastMs);
  const earlier = sent[Math.floor(random() * 500)];
  if (chance < 0.05 && earlier) return { ...earlier, kind: 'repeated' };
  const sensorId = `bench-${index % sensorsPerPlace}`;
  const timeMs = lastMs - Math.floor(index / sensorsPerPlace) * stepMs;
  const temperatureC = Math.round(150 + random() * 100) / 10;
  const humidityPct = Math.round(40 + random() * 50);
  return {
    kind: 'timed',
    topic: `glasstide/${placeId}/readings/${sensorId}`,
    payload: JSON.stringify({ temperatureC, humidityPct, time: timeMs }),
    key: readingKey(placeId, sensorId, timeMs, temperatureC),
    retain,
  };
}

/** The `index`th message of a sensor without a clock. */
export function untimedMessage(board: number, sensor: number, index: number): SentMessage {
  const placeId = placeOf(board);
  const temperatureC = Math.round(1000 * (10 + sensor * 10) + index) / 1000;
  return {
    kind: 'untimed',
    topic: `glasstide/${placeId}/readings/${untimedSensors[sensor]}`,
    payload: String(temperatureC),
    key: untimedKey(placeId, temperatureC),
    retain: false,
  };
}

function trapCount(placeId: string, index: number, lastMs: number): SentMessage {
  const id = `count-${index}`;
  const time = new Date(lastMs - index * 60_000).toISOString();
  const counts = { whitefly: index % 9 };
  return {
    kind: 'count',
    topic: `glasstide/${placeId}/counts/${trapId}`,
    payload: JSON.stringify({ id, time, exposureDays: 7, counts }),
    key: countKey(placeId, id),
    retain: false,
  };
}

function garbage(placeId: string, index: number, retain: boolean): SentMessage {
  const topic = `glasstide/${placeId}/readings/bench-0`;
  const payload = [`{"temperatureC": "warm ${index}`, `warm ${index}`, `[${index}, {}]`, `{"t": ${index}}`][
    index % 4
  ]!;
  return { kind: 'garbage', topic, payload, key: garbageKey(topic, payload), retain };
}
