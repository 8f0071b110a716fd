/**
 * `npm run -s houses -- [--messages N]`: processor time a reading costs in each program of a club's machine, which does not
 * depend on what else the machine does, and how many houses that would carry. Reads /proc, so on Linux only.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import mqtt from 'mqtt';
import { openInfluxStore } from '../../services/store/sqlite.ts';
import { startMosquitto } from '../ingest/mosquitto.ts';
import { openHouse, placeId } from '../ingest/station.ts';
import { startInflux } from '../store/influxServer.ts';
import { startProcess } from './serviceProcess.ts';

const { values } = parseArgs({ options: { messages: { type: 'string', default: '2000' } } });
const messages = Number(values.messages);
const processes = 2;
/** Clock ticks a second in /proc, a constant of Linux on every common machine. */
const ticks = 100;

const folder = mkdtempSync(join(tmpdir(), 'glasstide-houses-'));
const path = join(folder, 'glasstide.sqlite');
await openHouse(path).close();
const [broker, influx] = [await startMosquitto(), await startInflux()];
const url = influx.url('club');
const ingest = Array.from({ length: processes }, (_, i) =>
  startProcess({
    GLASSTIDE_DATA: folder,
    GLASSTIDE_ONLY: 'ingest',
    GLASSTIDE_MQTT_CLIENT: `club-${i}`,
    GLASSTIDE_MQTT_URL: broker.url('service'),
    GLASSTIDE_MQTT_SHARE: 'club',
    GLASSTIDE_INFLUX_URL: url,
  }),
);
for (const one of ingest) await one.ready;
const pids = new Map([
  ['ingest, both processes', ingest.map(({ pid }) => pid)],
  ['mosquitto', [broker.pid()]],
  ['InfluxDB', [influx.pid()]],
]);
const before = usedSeconds();

const board = await mqtt.connectAsync(broker.url('lean-to'));
const store = openInfluxStore({ path, url });
const newestMs = Math.floor(Date.now() / 60_000) * 60_000;
const startedMs = performance.now();
// Ten on the way at a time, from four sensors, a minute apart: the marks have as much to look at as in a house.
let next = 0;
const sendOn = async () => {
  for (let i = next++; i < messages; i = next++) {
    const time = newestMs - (messages - i) * 15_000;
    const payload = JSON.stringify({ temperatureC: 18 + (i % 40) / 10, humidityPct: 60, time });
    await board.publishAsync(`glasstide/${placeId}/readings/bench-${i % 4}`, payload, { qos: 1 });
  }
};
await Promise.all(Array.from({ length: 10 }, sendOn));
while ((await store.readings.range(placeId, { fromMs: 0, toMs: 4e12 })).length < messages) await pause(500);
await store.readings.emptied();
const seconds = (performance.now() - startedMs) / 1000;
const after = usedSeconds();

process.stdout.write(
  '| program | ms of processor time a reading | readings/s on one core |\n|---|---|---|\n',
);
let all = 0;
for (const name of pids.keys()) {
  const ms = (1000 * ((after.get(name) ?? 0) - (before.get(name) ?? 0))) / messages;
  all += ms;
  process.stdout.write(`| ${name} | ${ms.toFixed(2)} | ${Math.round(1000 / ms)} |\n`);
}
process.stdout.write(`| all together | ${all.toFixed(2)} | ${Math.round(1000 / all)} |\n`);
process.stdout.write(`${messages} readings in ${Math.round(seconds)} s on this machine as it was.\n`);

await board.endAsync();
await store.close();
for (const one of ingest) await one.stop();
await influx.close();
await broker.close();
rmSync(folder, { recursive: true });

/** User and system time of each program so far (proc(5), fields 14 and 15 of stat). */
function usedSeconds(): Map<string, number> {
  const used = (pid: number | undefined) => {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /, '')
      .split(' ');
    return (Number(fields[11]) + Number(fields[12])) / ticks;
  };
  return new Map([...pids].map(([name, of]) => [name, of.reduce<number>((sum, pid) => sum + used(pid), 0)]));
}
