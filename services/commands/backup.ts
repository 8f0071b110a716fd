/** `npm run -s backup -- FILE`: a whole copy of everything, also while the service runs. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Config, settingsFrom } from '../config.ts';
import { CopyProblem, copyDatabase, databaseName } from '../store/copies.ts';
import { moveReadings } from '../store/influx/move.ts';
import { openInfluxStore, openStore } from '../store/sqlite.ts';
import type { Readings } from '../store/store.ts';
import { onlyArgument, runCommand } from './runCommand.ts';
import { CannotRun, type Output, onTheTerminal } from './terminal.ts';

const usage = `Usage: npm run -s backup -- FILE
  FILE  where the copy goes; it must not be there yet
The folder of the database is GLASSTIDE_DATA. Readings on an InfluxDB server are copied into the file too.`;

export const run = (args: readonly string[], config: Config, output: Output): Promise<number> =>
  runCommand(output, async () => {
    const file = onlyArgument(args, usage);
    if (existsSync(file)) throw new CannotRun(`${file} is there already: name another file.`);
    const { bytes } = await copyEverything(config, file);
    return `${file}: ${(bytes / 1e6).toFixed(1)} MB, whole.`;
  });

/** A copy that stands alone, whatever the readings live on. */
export async function copyEverything(
  { dataDir, influxUrl }: Pick<Config, 'dataDir' | 'influxUrl'>,
  file: string,
): Promise<{ bytes: number }> {
  const path = join(dataDir, databaseName);
  if (influxUrl === undefined) return copyDatabase(path, file);
  const server = openInfluxStore({ path, url: influxUrl });
  try {
    return await copyDatabase(path, file, (part) => bringIn(server.readings, part));
  } finally {
    await server.close();
  }
}

/** Puts the readings of a server into a copy, instead of those from before there was one. */
async function bringIn(readings: Readings, part: string): Promise<void> {
  const copy = openStore({ path: part });
  try {
    for (const placeId of await copy.readings.places()) await copy.readings.clear(placeId);
    await moveReadings(
      readings,
      copy.readings,
      async () => {},
      ({ placeId, different }) => {
        if (different > 0)
          throw new CopyProblem(`${different} readings of ${placeId} did not get into the copy.`);
      },
    );
  } finally {
    await copy.close();
  }
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await run(process.argv.slice(2), settingsFrom(process.env).config, onTheTerminal);
}
