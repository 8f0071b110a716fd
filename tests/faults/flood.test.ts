/** Boards with bad firmware that shout as fast as the line takes it, beside one that measures. */
import { afterEach, expect, it } from 'vitest';
import { connectBoard, openStation, placeId, publish, type Station, startMs } from '../ingest/station.ts';

let station: Station;
afterEach(() => station.close());

const shouted = 20_000;
const bench = `glasstide/${placeId}/readings/bench`;

it('20,000 messages of garbage hold up no reading, and are counted where they are not kept', async () => {
  station = await openStation();
  const shouters = await Promise.all([1, 2, 3, 4].map(() => connectBoard(station.port)));
  const calm = await connectBoard(station.port);
  const shouting = shouters.map(async (shouter, who) => {
    for (let i = who; i < shouted; i += shouters.length) {
      const payload = [`warm ${i}`, `{"temperatureC": "${i}`, `[${i}, {}]`][i % 3]!;
      // Every tenth is the same one again, as a broker's memory or a loop would send it.
      const options = { qos: 0 as const, retain: i % 10 === 0 };
      await shouter.publishAsync(
        i % 2 === 0 ? bench : `glasstide/${placeId}/readings/Bad Name`,
        payload,
        options,
      );
    }
    // Answered when everything before it on this line was dealt with.
    await publish(shouter, bench, `{"temperatureC": 20, "time": ${startMs - 3_600_000 - who}}`);
  });
  for (let minute = 1; minute <= 50; minute += 1) {
    await publish(calm, bench, `{"temperatureC": 19.4, "time": ${startMs - minute * 60_000}}`);
  }
  await Promise.all(shouting);
  expect(await station.readings()).toHaveLength(50 + shouters.length);
  const { waiting, settled } = station.store.quarantine.letGo();
  expect([station.store.quarantine.waiting(), settled, waiting]).toEqual([10_000, 0, shouted - 10_000]);
  for (const board of [...shouters, calm]) await board.endAsync();
}, 120_000);
