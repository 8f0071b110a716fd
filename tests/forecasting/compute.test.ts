import { afterEach, describe, expect, it } from 'vitest';
import { startCompute } from '../../services/forecasting/compute.ts';
import type * as model from '../../services/model/index.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

const asOf = '2026-05-18T08:00:00Z';
const season = smallSeason();
const [answers, throws, ends] = [{ seed: 1 }, { seed: 2 }, { seed: 3 }];

describe('the computing thread', () => {
  let thread = startCompute(new URL('fakeWorker.ts', import.meta.url));
  afterEach(async () => {
    await thread.close();
    thread = startCompute(new URL('fakeWorker.ts', import.meta.url));
  });

  it('answers each request with its own outcome and is kept', async () => {
    const [one, other] = await Promise.all([
      thread.compute(season, asOf, answers),
      thread.compute(season, '2026-05-18T09:00:00Z', answers),
    ]);
    expect(one?.forecast).toMatchObject({ placeId: 'crooked-pane', asOf });
    expect(other?.forecast.asOf).toBe('2026-05-18T09:00:00Z');
    expect((await thread.compute(season, asOf, answers)).forecast.seed).toBe(one?.forecast.seed);
  });

  it('passes an error on and computes again', async () => {
    await expect(thread.compute(season, asOf, throws)).rejects.toThrow('density of young is not finite');
    await expect(thread.compute(season, asOf, answers)).resolves.toBeDefined();
  });

  it('rejects what a thread that ended has not answered, and starts another', async () => {
    await expect(thread.compute(season, asOf, ends)).rejects.toThrow('ended before it had answered');
    await expect(thread.compute(season, asOf, answers)).resolves.toBeDefined();
  });

  it('rejects what is being computed when it is closed', async () => {
    const asked = thread.compute(season, asOf, answers);
    const refused = expect(asked).rejects.toThrow('ended before it had answered');
    await thread.close();
    await refused;
  });
});

/** From the sources and as compiled by tests/build.ts: the thread must find its file both ways. */
describe.each([
  ['the sources', '../../services/forecasting/compute.ts', '../../services/model/index.ts'],
  ['the compiled files', '../../dist/services/forecasting/compute.js', '../../dist/services/model/index.js'],
])('the real computation from %s', (_, computeFile, modelFile) => {
  it('gives in its thread what it gives here, bit for bit', async () => {
    const load = (file: string) => import(/* @vite-ignore */ new URL(file, import.meta.url).href);
    const { startCompute: start }: { startCompute: typeof startCompute } = await load(computeFile);
    const { forecastAndAdvise }: Pick<typeof model, 'forecastAndAdvise'> = await load(modelFile);
    const thread = start();
    const outcome = await thread.compute(season, asOf, { seed: 7 });
    await thread.close();
    expect(outcome).toEqual(forecastAndAdvise(season, asOf, { seed: 7 }));
    expect(outcome.forecast).toMatchObject({ placeId: 'crooked-pane', seed: 7 });
  });
});
