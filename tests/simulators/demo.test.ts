import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { type Advice, type Season, seasonSchema } from '../../services/model/index.ts';
import { type Demo, startDemo } from '../../simulators/demo.ts';
import { shown } from '../../simulators/scenarios.ts';

const folders: string[] = [];
const open: Demo[] = [];

async function demo(): Promise<{ demo: Demo; lines: string[] }> {
  const dataDir = mkdtempSync(join(tmpdir(), 'glasstide-demo-test-'));
  folders.push(dataDir);
  const lines: string[] = [];
  const started = await startDemo({
    ...shown,
    config: {
      dataDir,
      httpHost: '127.0.0.1',
      httpPort: 0,
      mqtt: { embeddedPort: 0, host: '127.0.0.1' },
      demo: true,
      log: 'silent',
    },
    say: (line) => lines.push(line),
  });
  open.push(started);
  return { demo: started, lines };
}

afterAll(async () => {
  for (const one of open) await one.close();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

async function get<T>({ url, placeId }: Demo, path: string): Promise<T> {
  const response = await fetch(`${url}/api/places/${placeId}/${path}`);
  expect(response.status).toBe(200);
  return (await response.json()) as T;
}

describe('the demo in the real service', { timeout: 240_000 }, () => {
  test('a season in progress, advice with a day to order by, and time that moves on', async () => {
    const { demo: first, lines } = await demo();
    const season = seasonSchema.parse(await get<Season>(first, 'season'));
    expect(season.readings.length).toBeGreaterThan(15_000);
    expect(season.trapCounts.length).toBeGreaterThan(15);
    expect(lines.length).toBeGreaterThan(12);

    const health = await (await fetch(`${first.url}/api/health`)).json();
    expect(health).toMatchObject({ status: 'well', reasons: [], demo: true });

    const { advice, issuedAt } = await get<{ advice: Advice; issuedAt: string }>(first, 'outcome');
    expect(['order', 'release', 'top-up']).toContain(advice.decision);
    expect(advice.plan?.enemy).toBe('amblyseius-swirskii');
    expect(advice.plan?.orderBy).toMatch(/^2026-05-2\d$/);
    expect(issuedAt).toMatch(/^2026-05-25T/);
    const { rounds } = await get<{ rounds: { said?: unknown }[] }>(first, 'held');
    expect(rounds.filter(({ said }) => said !== undefined).length).toBeGreaterThanOrEqual(4);
    const { warnings } = await get<{ warnings: { rule: string; state: string }[] }>(first, 'warnings');
    expect(warnings.some(({ rule, state }) => rule === 'order-by' && state === 'open')).toBe(true);

    const readingsNow = async () => (await get<Season>(first, 'season')).readings.length;
    expect(await first.goOn()).toBe(true);
    await first.service.settled();
    expect(await readingsNow()).toBe(season.readings.length + 2);
    open.splice(open.indexOf(first), 1);
    await first.close();

    const { demo: second } = await demo();
    expect(await get<Season>(second, 'season')).toEqual(season);
    const again = await get<{ advice: Advice; forecast: unknown }>(second, 'outcome');
    expect(again.advice.sentence).toBe(advice.sentence);
  });
});
