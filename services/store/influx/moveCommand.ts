/** `npm run -s readings -- --data data --influx http://127.0.0.1:8086/glasstide --to influx` (or `--to embedded`) */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { openInfluxStore, openStore } from '../sqlite.ts';
import { moveReadings } from './move.ts';

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      data: { type: 'string', default: 'data' },
      influx: { type: 'string' },
      to: { type: 'string' },
    },
  });
  const { data, influx: url, to } = values;
  if (url === undefined || (to !== 'influx' && to !== 'embedded'))
    throw new Error('Say --influx http://127.0.0.1:8086/glasstide and --to influx or --to embedded.');
  const path = join(data, 'glasstide.sqlite');
  if (!existsSync(path)) throw new Error(`There is no ${path}: name the folder of the database with --data.`);

  const embedded = openStore({ path });
  const server = openInfluxStore({ path, url });
  try {
    let different = 0;
    const [from, target] = to === 'influx' ? [embedded, server] : [server, embedded];
    // Refuses at once while the server is away; what waits for it is sent first.
    await server.readings.places();
    await server.readings.emptied();
    await moveReadings(from.readings, target.readings, server.readings.emptied, (moved) => {
      different += moved.different;
      const { placeId, readings, knownBefore } = moved;
      process.stdout.write(
        `${placeId}: ${readings} readings, ${knownBefore} of them there before, ${moved.different} different\n`,
      );
    });
    if (different > 0) process.exitCode = 1;
  } finally {
    await server.close();
    await embedded.close();
  }
}

main().catch((error) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
