/** `npm run -s passphrase`: chooses the passphrase on the machine itself, first or anew when it is lost. */
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { createAccess } from '../access/door.ts';
import { type Clock, realClock } from '../clock.ts';
import { type Config, settingsFrom } from '../config.ts';
import { databaseName } from '../store/copies.ts';
import { openStore } from '../store/sqlite.ts';
import { runCommand } from './runCommand.ts';
import { CannotRun, type Output, onTheTerminal } from './terminal.ts';

/** Whoever can run this can read the database itself, so the passphrase before is not asked for. */
export const run = (input: Readable, { dataDir }: Config, clock: Clock, output: Output): Promise<number> =>
  runCommand(output, async () => {
    output.progress(
      'Type a passphrase of at least 12 characters, then Enter. It is not kept, only its hash.',
    );
    const passphrase = await firstLine(input);
    const store = openStore({ path: join(dataDir, databaseName) });
    try {
      const access = createAccess({ credentials: store.credentials, clock });
      const first = access.isOpen();
      await access.resetPassphrase(passphrase);
      return first
        ? 'The house is locked. Start glasstide again, if it runs, so that it is answered from outside.'
        : 'The passphrase is changed, and every owner has to sign in anew.';
    } finally {
      await store.close();
    }
  });

async function firstLine(input: Readable): Promise<string> {
  const lines = createInterface({ input, terminal: false });
  for await (const line of lines) {
    lines.close();
    return line;
  }
  throw new CannotRun('Nothing was typed, and nothing was changed.');
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await run(process.stdin, settingsFrom(process.env).config, realClock(), onTheTerminal);
}
