import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import {
  type Advice,
  leafCheck,
  order,
  place,
  planting,
  release,
  sensor,
  type TrapCount,
  trap,
  trapCount,
} from '../../services/model/index.ts';
import { type GardenEvent, play } from '../../simulators/play.ts';
import type { Scenario } from '../../simulators/scenario.ts';
import { scenarioByName, scenarios, shown } from '../../simulators/scenarios.ts';

const dayMs = 86_400_000;

function history(scenario: Scenario, seed: number, untilMs = Date.parse(scenario.presentAt)): GardenEvent[] {
  const events: GardenEvent[] = [];
  for (const event of play(scenario, seed)) {
    if (event.atMs > untilMs) break;
    events.push(event);
  }
  return events;
}

const recordsOf = (events: readonly GardenEvent[], noun: string) =>
  events.flatMap((event) => (event.what === 'record' && event.noun === noun ? [event.data] : []));
const trapCounts = (events: readonly GardenEvent[]) => recordsOf(events, 'trap-counts') as TrapCount[];
const digest = (events: readonly GardenEvent[]) =>
  createHash('sha256').update(JSON.stringify(events)).digest('hex');
const low = (counted: TrapCount['counts']['whitefly']) =>
  counted === undefined ? 0 : typeof counted === 'number' ? counted : counted.low;

const schemas: Record<string, z.ZodType> = {
  places: place,
  plantings: planting,
  sensors: sensor,
  traps: trap,
  'trap-counts': trapCount,
  'leaf-checks': leafCheck,
  orders: order,
  releases: release,
};

describe.each(scenarios.map((scenario) => [scenario.name, scenario] as const))('%s', (_, scenario) => {
  const untilMs = Date.parse(scenario.startsAt) + 84 * dayMs;
  const events = history(scenario, 1, untilMs);

  test('same seed, same messages and records; another seed, others', () => {
    expect(digest(history(scenario, 1, untilMs))).toBe(digest(events));
    expect(digest(history(scenario, 2, untilMs))).not.toBe(digest(events));
  });

  test('events come in order of time', () => {
    const times = events.map((event) => event.atMs);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  test('every record is one the season file takes, with an id of its own', () => {
    const seen = new Set<string>();
    for (const event of events) {
      if (event.what !== 'record') continue;
      const data = schemas[event.noun]!.parse(event.data) as { id: string };
      expect(seen.has(`${event.noun}/${data.id}`)).toBe(false);
      seen.add(`${event.noun}/${data.id}`);
    }
  });

  test('counts name hung traps and cover the days since the last one', () => {
    const traps = new Set(scenario.traps.map(({ id }) => id));
    const last = new Map<string, number>();
    for (const count of trapCounts(events)) {
      expect(traps).toContain(count.trapId);
      const sinceMs = last.get(count.trapId) ?? Date.parse(scenario.startsAt);
      expect(count.exposureDays).toBeCloseTo((Date.parse(count.time) - sinceMs) / dayMs, 9);
      last.set(count.trapId, Date.parse(count.time));
    }
    expect(last.size).toBe(traps.size);
  });
});

describe('the demo', () => {
  const scenario = scenarioByName(shown.scenario);
  const events = history(scenario, shown.seed);
  const presentMs = Date.parse(scenario.presentAt);
  const counts = trapCounts(events);
  const recent = (days: number) =>
    counts.filter((count) => Date.parse(count.time) > presentMs - days * dayMs);

  test('twelve weeks of two sensors', () => {
    expect(presentMs - Date.parse(scenario.startsAt)).toBeGreaterThanOrEqual(84 * dayMs);
    expect(events.filter((event) => event.what === 'message').length).toBeGreaterThan(15_000);
  });

  // planning.md's rule: 1 a trap and week over 16 days, insects on 2 days of 28, 60 days left.
  test('whitefly call for a release: pooled catch, two days with insects, season left, no parcel yet', () => {
    const pooled = recent(16);
    const caught = pooled.reduce((sum, count) => sum + low(count.counts.whitefly), 0);
    const exposed = pooled.reduce((sum, count) => sum + count.exposureDays * count.countedFraction, 0);
    expect((7 * caught) / exposed).toBeGreaterThan(1);
    const days = recent(28).filter((count) => low(count.counts.whitefly) > 0);
    expect(new Set(days.map((count) => count.time)).size).toBeGreaterThanOrEqual(2);
    expect((Date.parse('2026-10-15') - presentMs) / dayMs).toBeGreaterThan(60);
    expect(recordsOf(events, 'releases')).toHaveLength(0);
    expect(recordsOf(events, 'orders')).toHaveLength(0);
  });

  test('the supplier sells predatory mites only', () => {
    expect(Object.keys(scenario.place.supplier!.pricePerAnimal)).toEqual(['amblyseius-swirskii']);
  });

  test('catches rise over the last weeks', () => {
    const rate = (from: number, to: number) => {
      const some = counts.filter((count) => {
        const age = (presentMs - Date.parse(count.time)) / dayMs;
        return age >= from && age < to;
      });
      const exposed = some.reduce((sum, count) => sum + count.exposureDays * count.countedFraction, 0);
      return some.reduce((sum, count) => sum + low(count.counts.whitefly), 0) / exposed;
    };
    expect(rate(0, 14)).toBeGreaterThan(rate(28, 42));
  });

  // Lee & Gillespie 2011: A. swirskii grows only above a mean of 15.5 degC.
  test('the last two weeks are warm enough for the mites', () => {
    const warm = events.flatMap((event) =>
      event.what === 'message' && event.topic.endsWith('/bench') && event.atMs > presentMs - 14 * dayMs
        ? [Number(/"temperatureC":([\d.]+)/.exec(event.payload)?.[1])]
        : [],
    );
    expect(warm.length).toBeGreaterThan(1000);
    expect(warm.reduce((sum, value) => sum + value, 0) / warm.length).toBeGreaterThan(15.5);
  });
});

test('a quiet season shows only a wrong insect now and then', () => {
  const counts = Array.from({ length: 8 }, (_, seed) =>
    trapCounts(history(scenarioByName('quiet-season'), seed)),
  ).flat();
  const cardWeeks = counts.reduce((sum, count) => sum + (count.exposureDays * count.countedFraction) / 7, 0);
  for (const kind of ['whitefly', 'aphid', 'thrips'] as const) {
    const seen = counts.reduce((sum, count) => sum + low(count.counts[kind]), 0);
    expect(Math.abs(seen / cardWeeks - 0.12)).toBeLessThan(0.08);
  }
});

test('a forgetful grower leaves gaps, never zeros, and taps bands', () => {
  const counts = trapCounts(history(scenarioByName('late-aphids'), 1));
  expect(counts.some((count) => count.exposureDays > 7)).toBe(true);
  expect(counts.every((count) => typeof count.counts.whitefly === 'object')).toBe(true);
});

test('a willing grower orders what is advised, once, and lets it go when it comes', () => {
  const scenario = scenarioByName('good-advice');
  const advice = {
    decision: 'order',
    plan: {
      enemy: 'amblyseius-swirskii',
      form: 'adult in sachet',
      number: 1200,
      perM2: 100,
      arrivesOn: '2026-05-07',
      windowFrom: '2026-05-07',
      windowTo: '2026-05-14',
      lookOn: '2026-05-28',
    },
  } as Advice;
  const records: { noun: string; data: object; atMs: number }[] = [];
  const events = play(scenario, 1);
  let next = events.next();
  while (!next.done && next.value.atMs < Date.parse('2026-06-20')) {
    const event = next.value;
    if (event.what === 'record') records.push(event);
    const asked = event.what === 'ask' && event.atMs > Date.parse('2026-05-03');
    next = events.next(asked && event.atMs < Date.parse('2026-05-06') ? advice : undefined);
  }
  const orders = records.filter(({ noun }) => noun === 'orders');
  const releases = records.filter(({ noun }) => noun === 'releases');
  expect(orders).toHaveLength(1);
  expect(releases).toHaveLength(1);
  expect(releases[0]!.data).toMatchObject({ enemy: 'amblyseius-swirskii', number: 1200 });
  expect(new Date(releases[0]!.atMs).toISOString().slice(0, 10)).toBe('2026-05-07');
});

test('an unknown scenario is answered with the names of those there are', () => {
  expect(() => scenarioByName('mars')).toThrow(/spring-whitefly/);
});
