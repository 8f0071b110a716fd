// Reads vitest's JSON report and prints the closing line. A suite that could not even load counts as
// one failure, and so does a skipped test: nothing is skipped silently.
import { existsSync, readFileSync } from 'node:fs';

const path = process.argv[2];
if (!path || !existsSync(path)) {
  console.log('0 passed, 1 failed');
  process.exit(1);
}
const report = JSON.parse(readFileSync(path, 'utf8'));
const unloaded = report.testResults.filter(
  (file) => file.status === 'failed' && file.assertionResults.length === 0,
);
for (const file of unloaded) console.error(`could not load ${file.name}: ${file.message}`);
const skipped = report.numPendingTests + report.numTodoTests;
if (skipped > 0) console.error(`${skipped} skipped: a skipped test counts as failed`);
const failed = report.numFailedTests + unloaded.length + skipped + (report.numTotalTests === 0 ? 1 : 0);
console.log(`${report.numPassedTests} passed, ${failed} failed`);
process.exit(failed === 0 && report.success ? 0 : 1);
