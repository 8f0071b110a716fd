/** `npm run -s export -- FOLDER`: every place as a season file (JSON) and its readings as CSV. */
import { createWriteStream, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { pathToFileURL } from 'node:url';
import { type Config, settingsFrom } from '../config.ts';
import { files } from '../forecasting/files.ts';
import { databaseName } from '../store/copies.ts';
import { openInfluxStore, openStore } from '../store/sqlite.ts';
import { onlyArgument, runCommand } from './runCommand.ts';
import { CannotRun, type Output, onTheTerminal } from './terminal.ts';

const usage = `Usage: npm run -s export -- FOLDER
  FOLDER  gets <place>.season.json and <place>.readings.csv of every place; files of these names are replaced`;

export const run = (
  args: readonly string[],
  { dataDir, influxUrl: url }: Config,
  output: Output,
): Promise<number> =>
  runCommand(output, async () => {
    const folder = onlyArgument(args, usage);
    const path = join(dataDir, databaseName);
    if (!existsSync(path))
      throw new CannotRun(`There is no database at ${path}: name its folder in GLASSTIDE_DATA.`);
    mkdirSync(folder, { recursive: true });
    const store = url === undefined ? openStore({ path }) : openInfluxStore({ path, url });
    try {
      const places = store.records.places().map(({ id }) => id);
      for (const id of places) {
        await write(join(folder, `${id}.season.json`), files.text(store, id));
        await write(join(folder, `${id}.readings.csv`), files.csv(store, id));
        output.progress(id);
      }
      return `${places.length === 1 ? '1 place' : `${places.length} places`} in ${folder}.`;
    } finally {
      await store.close();
    }
  });

const write = (path: string, parts: AsyncIterable<string>) =>
  pipeline(Readable.from(parts), createWriteStream(path));

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await run(process.argv.slice(2), settingsFrom(process.env).config, onTheTerminal);
}
