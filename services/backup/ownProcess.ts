/** The daily copy is made by the command, in a process of its own: copying and checking takes seconds. */
import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Rejects with what the command said when no copy was made. */
export function copyInOwnProcess({ dataDir, influxUrl }: { dataDir: string; influxUrl?: string }) {
  const isSource = import.meta.url.endsWith('.ts');
  const script = fileURLToPath(new URL(`../commands/backup.${isSource ? 'ts' : 'js'}`, import.meta.url));
  const loader = isSource ? ['--import', 'tsx'] : [];
  const env = {
    GLASSTIDE_DATA: dataDir,
    ...(influxUrl !== undefined && { GLASSTIDE_INFLUX_URL: influxUrl }),
  };
  return async (path: string): Promise<void> => {
    try {
      await run(process.execPath, [...loader, script, path], { env });
    } catch (error) {
      const { stderr = '' } = error as { stderr?: string };
      throw new Error(stderr.trim() || String(error));
    }
  };
}
