/** The MQTT channel: the newest advice and the open warnings as retained JSON, for a lamp or a display. */
import mqtt, { type MqttClient } from 'mqtt';
import type { Advice } from '../../model/index.ts';
import type { Warning } from '../../store/store.ts';

const connectTimeout = 5000;

export interface MqttChannel {
  /** Resolves when the broker has it, or at once while the broker is away: it gets the newest when it is back. */
  publish(placeId: string, advice: Advice, warnings: readonly Warning[]): Promise<void>;
  isConnected(): boolean;
  close(): Promise<void>;
}

/** Resolves when the broker answered or the first try was in vain; from then on it keeps trying. */
export async function startMqttChannel({ url }: { url: string }): Promise<MqttChannel> {
  const newest = new Map<string, string>();
  const client = mqtt.connect(url, { clientId: 'glasstide-advice', protocolVersion: 4, connectTimeout });
  const send = (topic: string, payload: string) =>
    client.publishAsync(topic, payload, { qos: 1, retain: true });
  // Without a listener the first refused connection would end the process; mqtt.js tries again.
  client.on('error', () => {});
  let away = gone(client);
  await Promise.race([new Promise((resolve) => client.once('connect', resolve)), away]);
  client.on('connect', () => {
    away = gone(client);
    for (const [topic, payload] of newest) send(topic, payload).catch(() => {});
  });

  async function say(topic: string, message: unknown): Promise<void> {
    const payload = JSON.stringify(message);
    newest.set(topic, payload);
    if (client.connected) await Promise.race([send(topic, payload), away]);
  }

  return {
    async publish(placeId, advice, warnings) {
      const { decision, sentence, verb, plan, asOf } = advice;
      await say(`glasstide/${placeId}/advice`, { asOf, decision, verb, sentence, plan });
      await say(
        `glasstide/${placeId}/warnings`,
        warnings.map((w) => ({ rule: w.rule, text: w.text, deadline: new Date(w.deadlineMs).toISOString() })),
      );
    },
    isConnected: () => client.connected,
    close: () => client.endAsync(true),
  };
}

function gone(client: MqttClient): Promise<void> {
  return new Promise((resolve) => {
    client.once('close', () => resolve());
  });
}
