/**
 * Asks the registry for known holes in what the service runs on. A grave one ends CI; a registry out of
 * reach, or one that knows no audits, does not: it is said, and nothing else.
 */
import { spawnSync } from 'node:child_process';

const grave = ['high', 'critical'];
const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], { encoding: 'utf8', timeout: 60_000 });

/** Undefined when the answer is none that npm gives when it could ask. */
function holes() {
  try {
    return JSON.parse(stdout ?? '').vulnerabilities;
  } catch {
    return undefined;
  }
}

const found = holes();
if (found === undefined) {
  console.log('npm audit: the registry could not be asked; nothing was checked.');
} else {
  const bad = Object.values(found).filter(({ severity }) => grave.includes(severity));
  for (const { name, severity, range } of bad) console.error(`${name} ${range}: ${severity}`);
  console.log(`npm audit: ${Object.keys(found).length} known, ${bad.length} of them grave.`);
  process.exitCode = bad.length > 0 ? 1 : 0;
}
