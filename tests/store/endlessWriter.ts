/**
 * Adds readings to the store in the file named by the first argument, on the InfluxDB server named by the second if
 * there is one, 20 calls in flight, until it is ended.
 */
import { openInfluxStore, openStore } from '../../services/store/sqlite.ts';

const [path = '', url] = process.argv.slice(2);
const { readings } = url === undefined ? openStore({ path }) : openInfluxStore({ path, url });
const place = 'ended-place';
let next = 0;

async function writeOn(): Promise<never> {
  for (;;) {
    const number = next++;
    const reading = {
      sensorId: 'bench',
      timeMs: Date.UTC(2026, 4, 13) + number * 10_000,
      temperatureC: (number % 300) / 10,
    };
    await readings.add(place, [reading]);
    process.stdout.write(`${JSON.stringify({ place, ...reading })}\n`);
  }
}

await Promise.all(Array.from({ length: 20 }, writeOn));
