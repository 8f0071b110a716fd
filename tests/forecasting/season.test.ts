import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { canonicalSeason } from '../../services/forecasting/canonicalSeason.ts';
import { assembleSeason, importSeason, seasonText } from '../../services/forecasting/season.ts';
import { seasonJsonSchema } from '../../services/forecasting/seasonSchema.ts';
import { type Season, seasonSchema } from '../../services/model/index.ts';
import { RefusalError } from '../../services/refusals.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';
import { seasons } from './seasons.ts';

const atMs = Date.parse('2026-05-18T08:00:00Z');
const all = Number.POSITIVE_INFINITY;
const fileText = (name: string) => readFileSync(new URL(name, import.meta.url), 'utf8');
async function fileOf(from: Store, placeId: string): Promise<string> {
  let text = '';
  for await (const part of seasonText(from, placeId)) text += part;
  return text;
}
const codeOf = (error: unknown) => (error instanceof RefusalError ? error.refusal.code : error);

let store: Store;
let season: Season;
const placeId = 'crooked-pane';
beforeEach(() => {
  store = openStore({ path: ':memory:' });
  season = smallSeason();
  return () => store.close();
});
const bringIn = (file: Season, replace = false) => importSeason(store, file, { replace, atMs });

describe('export and import', () => {
  it('gives back what was brought in, in canonical order', async () => {
    await fc.assert(
      fc.asyncProperty(seasons, async (generated) => {
        const fresh = openStore({ path: ':memory:' });
        await importSeason(fresh, generated, { replace: false, atMs });
        const text = await fileOf(fresh, generated.place.id);
        await fresh.close();
        expect(text).toBe(JSON.stringify(canonicalSeason(generated)));
        expect(JSON.stringify(seasonSchema.parse(JSON.parse(text)))).toBe(text);
      }),
      { seed: 20260518, numRuns: 100 },
    );
  });

  it('gives the same text a second time, from any order of the lists', async () => {
    await fc.assert(
      fc.asyncProperty(seasons, async (generated) => {
        const turned = Object.fromEntries(
          Object.entries(generated).map(([name, list]) => [
            name,
            Array.isArray(list) && name !== 'readings' ? list.toReversed() : list,
          ]),
        ) as Season;
        expect(JSON.stringify(canonicalSeason(turned))).toBe(JSON.stringify(canonicalSeason(generated)));
        expect(canonicalSeason(canonicalSeason(generated))).toEqual(canonicalSeason(generated));
      }),
      { seed: 20260518, numRuns: 100 },
    );
  });

  it('takes readings up to the instant asked for', async () => {
    await bringIn(season);
    const until = Date.parse('2026-04-27T02:00:00Z');
    const times = (await assembleSeason(store, placeId, until)).readings.map((r) => r.time);
    expect(times).toEqual(['2026-04-27T00:00:00Z', '2026-04-27T01:00:00Z', '2026-04-27T02:00:00Z']);
  });

  it('sorts by time across 2001-09-09, when milliseconds got a thirteenth digit', () => {
    const sighting = (id: string, time: string) => ({ id, time, what: 'whitefly' });
    const sightings = [sighting('a', '2026-05-01T00:00:00Z'), sighting('b', '2001-05-01T00:00:00Z')];
    expect(canonicalSeason({ ...season, sightings }).sightings.map((s) => s.id)).toEqual(['b', 'a']);
  });

  it('counts reading times as instants, keeps the first of two and names unknown sensors', () => {
    const reading = (time: string, temperatureC: number) => ({ sensorId: 'loft', time, temperatureC });
    const readings = [
      reading('2026-04-28T02:00:00+02:00', 11),
      reading('2026-04-27T23:00:00Z', 12),
      reading('2026-04-28T00:00:00.000Z', 99),
      reading('2026-04-28T00:00:00.250Z', 13),
    ];
    const canonical = canonicalSeason({ ...season, readings });
    expect(canonical.readings).toEqual([
      reading('2026-04-27T23:00:00Z', 12),
      reading('2026-04-28T00:00:00Z', 11),
      reading('2026-04-28T00:00:00.250Z', 13),
    ]);
    expect(canonical.sensors.map((s) => [s.id, s.name])).toEqual([
      ['bench', 'Bench'],
      ['loft', 'loft'],
    ]);
  });
});

describe('importing', () => {
  it('doubts readings as on arrival, so that no roll-up takes 85 °C for warmth', async () => {
    await bringIn(season);
    const readings = await store.readings.range(placeId, { fromMs: 0, toMs: all });
    expect(readings.filter((r) => r.doubt).map((r) => r.temperatureC)).toEqual([85]);
    const hours = await store.readings.hourly(placeId, { fromMs: 0, toMs: all });
    expect(Math.max(...hours.map((h) => h.maxC))).toBeLessThan(40);
  });

  it('refuses a place that exists and changes nothing', async () => {
    await bringIn(season);
    const other = { ...season, plantings: [], readings: [] };
    await expect(bringIn(other).catch(codeOf)).resolves.toBe('place-exists');
    expect(await fileOf(store, placeId)).toBe(JSON.stringify(canonicalSeason(season)));
  });

  it('replaces a place when asked: nothing of the old season is left, its records keep their history', async () => {
    await bringIn(season);
    const trapCounts = season.trapCounts.slice(0, 1);
    const other = { ...season, readings: season.readings.slice(5, 9), trapCounts, leafChecks: [] };
    await bringIn(other, true);
    expect(await fileOf(store, placeId)).toBe(JSON.stringify(canonicalSeason(other)));
    expect(await store.readings.hourly(placeId, { fromMs: 0, toMs: all })).toHaveLength(4);
    expect(store.records.history('leafCheck', placeId, 'leaves-1').map((r) => r.deleted)).toEqual([
      false,
      true,
    ]);
    expect(store.records.history('trapCount', placeId, 'count-1')).toHaveLength(1);
  });

  it('counts what it replaced not among what a person took back', async () => {
    await bringIn(season);
    const [mistaken, ...others] = season.trapCounts;
    store.records.remove({ kind: 'trapCount', placeId, id: mistaken!.id, atMs });
    await bringIn({ ...season, trapCounts: [], leafChecks: [] }, true);
    const takenBack = (kind: 'trapCount' | 'leafCheck') =>
      store.records.takenBack(kind, placeId).map(({ id }) => id);
    expect(others.length).toBeGreaterThan(0);
    expect([takenBack('trapCount'), takenBack('leafCheck')]).toEqual([[mistaken!.id], []]);
    const { data } = store.records.undo({ kind: 'trapCount', placeId, id: others[0]!.id, atMs });
    expect(data).toEqual(others[0]);
  });

  it('does not mix in what a deleted place of the same id held', async () => {
    await bringIn(season);
    store.records.remove({ kind: 'place', placeId, id: placeId, atMs });
    const other = { ...season, readings: [], traps: [] };
    await bringIn(other);
    expect(await fileOf(store, placeId)).toBe(JSON.stringify(canonicalSeason(other)));
  });

  it('refuses a file with one id for two counts before anything is stored', async () => {
    const twice = { ...season, trapCounts: [...season.trapCounts, season.trapCounts[0]!] };
    await expect(bringIn(twice).catch(codeOf)).resolves.toBe('record-invalid');
    expect(store.records.places()).toEqual([]);
    expect(store.records.list('planting', placeId)).toEqual([]);
  });

  it('refuses to take out a place that is not there', async () => {
    await expect(assembleSeason(store, 'nowhere', atMs).catch(codeOf)).resolves.toBe('record-unknown');
    await expect(fileOf(store, 'nowhere').catch(codeOf)).resolves.toBe('record-unknown');
  });
});

describe('published files', () => {
  it('small-season.json is the season its program makes, and is canonical', () => {
    const file = JSON.parse(fileText('../fixtures/small-season.json'));
    expect(file).toEqual(smallSeason());
    expect(canonicalSeason(seasonSchema.parse(file))).toEqual(file);
  });

  it('docs/season.schema.json is the schema that checks season files', () => {
    expect(JSON.parse(fileText('../../docs/season.schema.json'))).toEqual(seasonJsonSchema());
  });

  it('docs/data.md explains every field of the schema', () => {
    const page = fileText('../../docs/data.md');
    const missing = fieldNames(seasonJsonSchema()).filter((name) => !page.includes(`\`${name}\``));
    expect(missing).toEqual([]);
  });

  it('the example in docs/data.md is a season file', () => {
    const example = /```json\n(\{[\s\S]*?)```/.exec(fileText('../../docs/data.md'))?.[1] ?? '';
    expect(seasonSchema.parse(JSON.parse(example)).place.id).toMatch(/./);
  });
});

/** All property names of a JSON Schema, at any depth. */
function fieldNames(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const own = 'properties' in schema ? Object.keys(schema.properties as object) : [];
  return [...new Set([...own, ...Object.values(schema).flatMap(fieldNames)])];
}
