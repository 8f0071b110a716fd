/** `npm run -s faults -- [--messages N] [--kills K] [--seed S] [--store embedded|influx]` */
import { parseArgs } from 'node:util';
import { type FaultResult, runFaults } from './run.ts';

const { values } = parseArgs({
  options: {
    messages: { type: 'string', default: '100000' },
    kills: { type: 'string', default: '10' },
    seed: { type: 'string', default: '1' },
    store: { type: 'string', default: 'embedded' },
  },
});
const [messages, kills, seed] = [values.messages, values.kills, values.seed].map(Number);
if (
  !messages ||
  kills === undefined ||
  !(kills >= 0) ||
  !seed ||
  !['embedded', 'influx'].includes(values.store)
)
  throw new Error('Say --messages 100000 --kills 10 --seed 1 --store embedded (or influx).');

const result = await runFaults({
  messages,
  kills,
  seed,
  store: values.store === 'influx' ? 'influx' : 'embedded',
  onKill: (done, acknowledged) =>
    process.stderr.write(`ended ${done} of ${kills}, ${acknowledged} acknowledged\n`),
});
process.stdout.write(table(result));
const { lost, doubled, strange } = result.found;
for (const [word, keys] of Object.entries({ lost, doubled, strange }))
  for (const key of keys.slice(0, 10)) process.stdout.write(`${word}: ${key}\n`);
if (lost.length + doubled.length + strange.length > 0) process.exitCode = 1;

function table({ sent, acknowledged, sentAgain, kills: ended, found, seconds }: FaultResult): string {
  const all = Object.values(sent).reduce((sum, count) => sum + count, 0);
  const rows: [string, number | string][] = [
    ['messages sent', all],
    ['- readings with their own time', sent.timed],
    ['- readings without', sent.untimed],
    ['- readings repeated as a new message', sent.repeated],
    ['- trap counts', sent.count],
    ['- garbage', sent.garbage],
    ['acknowledged', acknowledged],
    ['sent again after a missing answer (DUP)', sentAgain],
    ['service ended by SIGKILL', ended.service],
    ['InfluxDB ended by SIGKILL', ended.influx],
    ['different messages', found.different],
    ['found once', found.once],
    ['of these refused with a reason', found.refusedWithReason],
    ['lost', found.lost.length],
    ['doubled', found.doubled.length],
    ['found, but never sent', found.strange.length],
    ['seconds', Math.round(seconds)],
  ];
  return `| what | number |\n|---|---|\n${rows.map(([what, number]) => `| ${what} | ${number.toLocaleString('en-GB')} |\n`).join('')}`;
}
