/** Copies on schedule: one a day, the old ones thinned out, and the truth about how the last one went. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Clock } from '../clock.ts';
import { copyName, dayOfCopy, surplusCopies } from './rotation.ts';

export interface BackupState {
  /** When the last whole copy was made; undefined before the first. */
  lastAtMs?: number;
  lastBytes?: number;
  copies: number;
  /** A sentence for the owner when the last try did not go well. */
  trouble?: string;
}

export interface Backups {
  /** Makes today's copy, in place of one from earlier today, and lets old ones go. Never rejects. */
  run(): Promise<void>;
  /** The same when the last one is more than a day old: for a machine that is off at night. */
  runIfDue(): Promise<void>;
  state(): BackupState;
}

export interface BackupParts {
  folder: string;
  clock: Clock;
  /** Makes a whole copy under a name that is free. */
  copyTo(path: string): Promise<unknown>;
}

const dayMs = 86_400_000;

function namesIn(folder: string): string[] {
  return existsSync(folder) && statSync(folder).isDirectory() ? readdirSync(folder) : [];
}

export function createBackups({ folder, clock, copyTo }: BackupParts): Backups {
  let trouble: string | undefined;
  let running: Promise<void> | undefined;

  const copies = () =>
    namesIn(folder)
      .filter((name) => dayOfCopy(name) !== undefined)
      .sort();
  const lastOf = (names: readonly string[]) => {
    const last = names.at(-1);
    return last === undefined ? undefined : statSync(join(folder, last));
  };

  async function copy(): Promise<void> {
    try {
      mkdirSync(folder, { recursive: true });
      const path = join(folder, copyName(new Date(clock.nowMs()).toISOString().slice(0, 10)));
      const fresh = `${path}.new`;
      rmSync(fresh, { force: true });
      await copyTo(fresh);
      renameSync(fresh, path);
      for (const name of surplusCopies(copies())) rmSync(join(folder, name));
      trouble = undefined;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      trouble = `Today's copy into ${folder} was not made: ${why}. The earlier copies are still there.`;
    }
  }

  const run = () => {
    running ??= copy().finally(() => {
      running = undefined;
    });
    return running;
  };

  return {
    run,
    async runIfDue() {
      const last = copies().at(-1);
      if (last === undefined || clock.nowMs() - Date.parse(dayOfCopy(last)!) >= 2 * dayMs) await run();
    },
    state() {
      const names = copies();
      const last = lastOf(names);
      return {
        copies: names.length,
        ...(last && { lastAtMs: last.mtimeMs, lastBytes: last.size }),
        ...(trouble !== undefined && { trouble }),
      };
    },
  };
}
