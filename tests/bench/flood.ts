/** Four boards shout garbage at a steady rate for some seconds, beside one that measures and waits for its answer. */
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import mqtt from 'mqtt';
import { startBroker } from '../../services/broker/broker.ts';
import { startIngest } from '../../services/ingest/ingest.ts';
import { openHouse, placeId, startMs } from '../ingest/station.ts';

const perSecond = 10_000;
const seconds = 20;
const shouters = 4;
const garbage = ['warm', '{"temperatureC": "', '[{}, {}]', '{"temperatureC": nan', '19,4'];

/** A field with its length before it (MQTT 3.1.1, 1.5.3). */
const field = (text: string) => {
  const bytes = Buffer.from(text);
  return Buffer.concat([Buffer.from([bytes.length >> 8, bytes.length & 255]), bytes]);
};

/** A packet shorter than 128 bytes, whose length is one byte (2.2.3). */
const packet = (type: number, ...parts: Buffer[]) => {
  const body = Buffer.concat(parts);
  return Buffer.concat([Buffer.from([type, body.length]), body]);
};

/** Written by hand, so that to shout costs this process next to nothing: version 4, clean session (3.1). */
const connectPacket = (id: string) => packet(0x10, field('MQTT'), Buffer.from([4, 2, 0, 0]), field(id));
const shout = (number: number) =>
  packet(
    0x30,
    field(`glasstide/${placeId}/readings/loud-${number % shouters}`),
    Buffer.from(`${garbage[number % garbage.length]} ${number}`),
  );

async function openLine(port: number, who: number): Promise<Socket> {
  const socket = connect(port, '127.0.0.1');
  await once(socket, 'connect');
  socket.write(connectPacket(`loud-${who}`));
  await once(socket, 'data');
  return socket;
}

/** As many as are due; one whose line is full waits. Resolves with how many were sent. */
async function shoutAll(lines: readonly Socket[]): Promise<number> {
  const begin = performance.now();
  let sent = 0;
  for (let left = seconds; left > 0; left = seconds - (performance.now() - begin) / 1000) {
    const due = Math.floor((seconds - left) * perSecond);
    for (const line of lines) {
      const share = Math.ceil((due - sent) / lines.length);
      if (line.writableNeedDrain || share <= 0) continue;
      line.write(Buffer.concat(Array.from({ length: share }, (_, i) => shout(sent + i))));
      sent += share;
    }
    await pause(5);
  }
  return sent;
}

/** How much garbage was taken in a second, and how long the calm board waited meanwhile. */
export async function floodLine(path: string): Promise<string> {
  const store = openHouse(path);
  const ingest = await startIngest({ store, clock: { nowMs: () => startMs }, onChange: () => {} });
  const broker = await startBroker({ port: 0, beforeAcknowledge: ingest.handle });
  const calm = await mqtt.connectAsync(`mqtt://127.0.0.1:${broker.port}`);
  const lines = await Promise.all(Array.from({ length: shouters }, (_, who) => openLine(broker.port, who)));
  const waitsMs: number[] = [];
  let shouting = true;
  const measure = async () => {
    while (shouting) {
      const begin = performance.now();
      const payload = JSON.stringify({ temperatureC: 19.4, time: startMs - (waitsMs.length + 1) * 60_000 });
      await calm.publishAsync(`glasstide/${placeId}/readings/calm`, payload, { qos: 1 });
      waitsMs.push(performance.now() - begin);
      await pause(100);
    }
  };
  const begin = performance.now();
  const before = process.cpuUsage();
  const measuring = measure();
  const sent = await shoutAll(lines);
  const took = () => store.quarantine.letGo().waiting + store.quarantine.waiting();
  while (took() < sent) await pause(10);
  const tookS = (performance.now() - begin) / 1000;
  const { user, system } = process.cpuUsage(before);
  shouting = false;
  await measuring;
  for (const line of lines) line.destroy();
  await calm.endAsync();
  await broker.close();
  await ingest.close();
  await store.close();
  waitsMs.sort((a, b) => a - b);
  const waited = [0.5, 1].map((share) => waitsMs[Math.ceil(share * waitsMs.length) - 1]?.toFixed(0));
  return [
    `garbage, ${perSecond} a second for ${seconds} s`.padEnd(48),
    `${Math.round(sent / tookS)} messages/s taken, ${((user + system) / sent).toFixed(0)} µs of processor each,`,
    `a reading meanwhile answered in ${waited[0]} ms, at most ${waited[1]} ms (${waitsMs.length} readings)`,
  ].join(' ');
}
