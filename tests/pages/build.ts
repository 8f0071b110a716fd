/** The dashboard as it is shipped, for the page tests to serve. */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * A folder with the built dashboard. The whole suite has just built it and names the folder; a file run alone builds
 * into a folder of its own, so that files may run side by side.
 */
export function buildDashboard(name: string): string {
  const built = process.env.GLASSTIDE_BUILT_DASHBOARD;
  if (built) return built;
  const outDir = `${root}tmp/dashboard-${name}`;
  execFileSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'error'],
    // A test runner's NODE_ENV would build the development variant, which is larger.
    { cwd: root, env: { ...process.env, NODE_ENV: 'production' } },
  );
  return outDir;
}
