/**
 * The only ways the virtual garden reaches the service: MQTT like its sensors and HTTP like its
 * grower's phone.
 */
import { connectAsync, type MqttClient } from 'mqtt';
import type { Advice } from '../services/model/index.ts';
import type { GardenEvent } from './play.ts';

export interface Speaker {
  /** Hands one event over; answers with advice when the event asks for it and there is any. */
  deliver(event: GardenEvent): Promise<Advice | undefined>;
  /** Resolves when every message so far has been acknowledged. */
  flush(): Promise<void>;
  close(): Promise<void>;
}

/** Eight hours of two sensors: the clock never runs further ahead of what is on disk. */
const mostInFlight = 64;

/** `writer` makes idempotency keys: the same garden played again writes nothing twice. */
export async function connectSpeaker(to: {
  mqttUrl: string;
  httpUrl: string;
  placeId: string;
  writer: string;
}): Promise<Speaker> {
  const client = await connectAsync(to.mqttUrl, {
    clientId: `practice-${to.placeId}`,
    protocolVersion: 4,
    reconnectPeriod: 1000,
  });
  const messages = inFlight(client);
  let written = 0;

  const record = async (noun: string, data: object) => {
    written += 1;
    const path = noun === 'places' ? '/api/places' : `/api/places/${to.placeId}/${noun}`;
    const response = await fetch(to.httpUrl + path, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': `${to.writer}-${written}` },
      body: JSON.stringify(data),
    });
    if (!response.ok)
      throw new Error(`POST ${path} was answered ${response.status}: ${await response.text()}`);
    await response.arrayBuffer();
  };

  return {
    async deliver(event) {
      if (event.what === 'message') await messages.publish(event.topic, event.payload, event.retain);
      if (event.what === 'record') {
        await messages.flush();
        await record(event.noun, event.data);
      }
      return event.what === 'ask' ? askForAdvice(to.httpUrl, to.placeId) : undefined;
    },
    flush: messages.flush,
    close: async () => {
      await messages.flush();
      await client.endAsync();
    },
  };
}

/** Has the forecast redone and answers with its advice. */
async function askForAdvice(httpUrl: string, placeId: string): Promise<Advice | undefined> {
  const response = await fetch(`${httpUrl}/api/places/${placeId}/outcome`, {
    method: 'POST',
    headers: { 'Idempotency-Key': crypto.randomUUID() },
  });
  if (!response.ok) return undefined;
  const { advice } = (await response.json()) as { advice: Advice };
  return advice;
}

/** Publishes at QoS 1 and holds the sender back while too many are not yet acknowledged. */
function inFlight(client: MqttClient) {
  const pending = new Set<Promise<unknown>>();
  let trouble: unknown;
  return {
    async publish(topic: string, payload: string, retain: boolean) {
      if (trouble) throw trouble;
      const sent: Promise<unknown> = client
        .publishAsync(topic, payload, { qos: 1, retain })
        .catch((error: unknown) => {
          trouble = error;
        })
        .finally(() => pending.delete(sent));
      pending.add(sent);
      if (pending.size >= mostInFlight) await Promise.race(pending);
    },
    async flush() {
      await Promise.all(pending);
      if (trouble) throw trouble;
    },
  };
}
