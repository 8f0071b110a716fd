/** A fixed tenth of `npm run -s faults -- --messages 1000000 --kills 50`, and a small part with a server. */
import { describe, expect, it } from 'vitest';
import { type FaultRun, runFaults } from './run.ts';

async function expectNothingLost(run: FaultRun): Promise<void> {
  const { sent, acknowledged, sentAgain, kills, found } = await runFaults(run);
  const all = Object.values(sent).reduce((sum, count) => sum + count, 0);
  expect(all).toBe(run.messages);
  expect(acknowledged).toBe(all);
  expect(kills.service + kills.influx).toBe(run.kills);
  expect(sentAgain).toBeGreaterThan(0);
  expect(found).toEqual({
    different: all - sent.repeated,
    once: all - sent.repeated,
    refusedWithReason: sent.garbage,
    lost: [],
    doubled: [],
    strange: [],
  });
  for (const kind of Object.values(sent)) expect(kind).toBeGreaterThan(0);
}

describe('ended by SIGKILL at random points under load', () => {
  it('the service has every message once', async () => {
    await expectNothingLost({ messages: 100_000, kills: 5, seed: 11, store: 'embedded' });
  }, 900_000);

  it('the service and its InfluxDB server have every message once', async () => {
    await expectNothingLost({ messages: 1600, kills: 2, seed: 12, store: 'influx' });
  }, 180_000);
});
