/** A service of its own process: store, ingest and embedded broker. `house.ts FILE PORT DISK_MS` prints its port. */
import { setTimeout } from 'node:timers/promises';
import { startBroker } from '../../services/broker/broker.ts';
import { startIngest } from '../../services/ingest/ingest.ts';
import type { Readings } from '../../services/store/store.ts';
import { openHouse, startMs } from '../ingest/station.ts';

const [path = '', port = '0', diskMs = '0'] = process.argv.slice(2);
const store = openHouse(path);
/** A slow disk, so that an acknowledgement sent before the commit would be caught. */
const add: Readings['add'] = async (...readings) => {
  await setTimeout(Number(diskMs));
  return store.readings.add(...readings);
};
const ingest = await startIngest({
  store: { ...store, readings: { ...store.readings, add } },
  clock: { nowMs: () => startMs },
  onChange: () => {},
});
const broker = await startBroker({ port: Number(port), beforeAcknowledge: ingest.handle });
process.stdout.write(`${broker.port}\n`);
