/** `npm run -s restore -- FILE`: puts a copy into an empty installation. */
import { pathToFileURL } from 'node:url';
import { type Config, settingsFrom } from '../config.ts';
import { restoreDatabase } from '../store/copies.ts';
import { onlyArgument, runCommand } from './runCommand.ts';
import { type Output, onTheTerminal } from './terminal.ts';

const usage = `Usage: npm run -s restore -- FILE
  FILE  a copy made by backup, or one of the daily copies
It goes into the folder GLASSTIDE_DATA, where no database may be yet. Stop the service first.`;

export const run = (args: readonly string[], { dataDir }: Config, output: Output): Promise<number> =>
  runCommand(output, async () => {
    restoreDatabase(onlyArgument(args, usage), dataDir);
    return `Restored into ${dataDir}. Start glasstide.`;
  });

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await run(process.argv.slice(2), settingsFrom(process.env).config, onTheTerminal);
}
