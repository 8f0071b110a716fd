import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { forecastAndAdvise, seasonSchema } from '../../services/model/index.ts';
import { openHouse } from './house.ts';

test('a count stands beside the ranges that were kept a week before it', async () => {
  const text = readFileSync(new URL('../fixtures/small-season.json', import.meta.url), 'utf8');
  const season = seasonSchema.parse(JSON.parse(text));
  const { id } = season.place;
  const [, before, last] = season.trapCounts.map(({ time }) => Date.parse(time));
  const house = await openHouse();
  await house.send('POST', '/api/season', season);
  // Made a minute after the count before the last.
  const asOfMs = before! + 60_000;
  const outcome = forecastAndAdvise(season, new Date(asOfMs).toISOString(), { members: 40 });
  house.store.issued.keep({ placeId: id, asOfMs, ...outcome });
  house.clock.ms = last! + 3_600_000;
  const answer = await house.app.inject(`/api/places/${id}/held`);
  expect(answer.statusCode).toBe(200);
  const { rounds, seasonEnd } = answer.json();
  expect(seasonEnd).toBe('2026-10-15');
  expect(rounds).toHaveLength(3);
  expect(rounds[0].said).toBeUndefined();
  expect(rounds[2].said).toEqual({
    asOf: outcome.forecast.asOf,
    count: outcome.forecast.pests[0]!.weeks[0]!.count,
  });
  expect(rounds[2].last).toBe(rounds[1].counts[0]);
  await house.close();
});

test('seasons stand side by side: a count of this year, a wash of the year before', async () => {
  const text = readFileSync(new URL('../fixtures/small-season.json', import.meta.url), 'utf8');
  const season = seasonSchema.parse(JSON.parse(text));
  const wash = { id: 'w', kind: 'soap' as const, time: '2025-06-01T09:00:00Z', coveredShare: 0.8 };
  const house = await openHouse();
  await house.send('POST', '/api/season', { ...season, treatments: [wash] });
  house.clock.ms = Date.parse(season.trapCounts.at(-1)!.time) + 3_600_000;
  const answer = await house.app.inject(`/api/places/${season.place.id}/seasons`);
  expect(answer.statusCode).toBe(200);
  const { seasons } = answer.json();
  expect(seasons.map(({ seasonEnd }: { seasonEnd: string }) => seasonEnd)).toEqual([
    '2026-10-15',
    '2025-10-15',
  ]);
  expect(seasons[0].pests[0].rounds).toHaveLength(3);
  expect(seasons[1]).toMatchObject({ treatments: 1, releases: 0, spent: 0 });
  await house.close();
});
