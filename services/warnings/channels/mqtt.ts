/** The MQTT channel: the newest advice and the open warnings as retained JSON, for a lamp or a display. */
import { connectAsync } from 'mqtt';
import type { Advice } from '../../model/index.ts';
import type { Warning } from '../../store/store.ts';

export interface MqttChannel {
  publish(placeId: string, advice: Advice, warnings: readonly Warning[]): Promise<void>;
  close(): Promise<void>;
}

export async function startMqttChannel(options: { url: string }): Promise<MqttChannel> {
  const client = await connectAsync(options.url, { clientId: 'glasstide-advice', protocolVersion: 4 });
  const say = (topic: string, payload: unknown) =>
    client.publishAsync(topic, JSON.stringify(payload), { qos: 1, retain: true });
  return {
    async publish(placeId, advice, warnings) {
      const { decision, sentence, verb, plan, asOf } = advice;
      await say(`glasstide/${placeId}/advice`, { asOf, decision, verb, sentence, plan });
      await say(
        `glasstide/${placeId}/warnings`,
        warnings.map((w) => ({ rule: w.rule, text: w.text, deadline: new Date(w.deadlineMs).toISOString() })),
      );
    },
    async close() {
      await client.endAsync();
    },
  };
}
