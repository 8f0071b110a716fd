/** A service of its own process: store, ingest and embedded broker. `house.ts FILE PORT DISK_MS LATER_MS END`
 * prints its port; its clock is LATER_MS later, and with END `at-commit` it ends itself between a commit and its acknowledgement. */
import { setTimeout } from 'node:timers/promises';
import { startBroker } from '../../services/broker/broker.ts';
import { startIngest } from '../../services/ingest/ingest.ts';
import type { Readings } from '../../services/store/store.ts';
import { openHouse, startMs } from '../ingest/station.ts';

const [path = '', port = '0', diskMs = '0', laterMs = '0', end = ''] = process.argv.slice(2);
const store = openHouse(path);
/** A slow disk, so that an acknowledgement sent before the commit would be caught. */
const add: Readings['add'] = async (...readings) => {
  await setTimeout(Number(diskMs));
  const added = await store.readings.add(...readings);
  if (end === 'at-commit') process.kill(process.pid, 'SIGKILL');
  return added;
};
const ingest = await startIngest({
  store: { ...store, readings: { ...store.readings, add } },
  clock: { nowMs: () => startMs + Number(laterMs) },
  onChange: () => {},
});
const broker = await startBroker({ port: Number(port), beforeAcknowledge: ingest.handle });
process.stdout.write(`${broker.port}\n`);
