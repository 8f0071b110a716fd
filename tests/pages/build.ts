/** Builds the dashboard as it is shipped, into a folder of the caller's own, so that test files may run side by side. */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** A test runner's NODE_ENV would build the development variant, which is larger. */
export function buildDashboard(name: string): string {
  const outDir = `${root}tmp/dashboard-${name}`;
  execFileSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'error'],
    { cwd: root, env: { ...process.env, NODE_ENV: 'production' } },
  );
  return outDir;
}
