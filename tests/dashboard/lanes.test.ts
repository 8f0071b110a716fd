import { expect, it } from 'vitest';
import { lanesAloud, lanesOf, lanesTable, spanOf } from '../../dashboard/figures/lanes.ts';
import { advice, forecast, nowMs } from '../pages/fixtureSeason.ts';

const calendar = { timeZone: 'Europe/London', seasonEnd: '2026-10-15' };
const lanes = lanesOf({ forecast, advice }, calendar, () => true);

it('holds every generation and wave of the pests, then the window of the friend', () => {
  expect(lanes.map(({ name, second }) => `${name}: ${second}`)).toEqual([
    'Peach aphids: next wave, by counts',
    'Peach aphids: wave 2, by counts',
    'Whitefly: generation 2, by degree-days',
    'Whitefly: next wave, by counts',
    'Whitefly: wave 2, by counts',
    'Encarsia: window to set out',
  ]);
  expect(lanes.map(({ pest }) => pest)).toEqual([true, true, true, true, true, false]);
});

it('a pest that was never found has no dated wave, in the drawing, aloud and in the table', () => {
  const unseen = lanesOf({ forecast, advice }, calendar, ({ pest }) => pest !== 'myzus-persicae');
  expect(unseen[0]).toMatchObject({
    name: 'Peach aphids',
    second: 'none found so far',
    words: 'no wave can be dated until some are found',
  });
  expect(unseen[0]).not.toHaveProperty('range');
  expect(unseen.filter(({ name }) => name === 'Peach aphids')).toHaveLength(1);
  expect(unseen[2]).toMatchObject({ name: 'Whitefly', second: 'next wave, by counts' });
  const told = 'none found so far: no wave can be dated until some are found';
  expect(lanesAloud(unseen)).toContain(`Peach aphids, ${told}.`);
  expect(lanesTable(unseen, calendar).rows[0]).toEqual(['Peach aphids', told, '', '', '']);
});

it('stages follow each other by their middle dates from the start of the generation', () => {
  const stages = lanes[2]!.stages;
  expect(stages.map(({ name }) => name)).toEqual(['egg', 'young scale', 'old scale', 'adult to first eggs']);
  expect(stages[0]!.fromMs).toBe(Date.parse('2026-04-13T12:00:00Z'));
  for (const [i, { fromMs }] of stages.slice(1).entries()) expect(fromMs).toBe(stages[i]!.toMs);
});

it('the axis holds all ranges and no more than five weeks before today', () => {
  const { fromMs, toMs } = spanOf(lanes, nowMs);
  expect(fromMs).toBeGreaterThanOrEqual(nowMs - 35 * 86_400_000);
  const ends = lanes.flatMap(({ range }) => (range ? [Date.parse(range.q975)] : []));
  expect(toMs).toBeGreaterThan(Math.max(...ends));
});

it('words and table tell the same dates as the drawing', () => {
  expect(lanesAloud(lanes)).toContain('Encarsia, window to set out: 120 Encarsia, 21 May to 28 May');
  expect(lanesTable(lanes, calendar).rows).toContainEqual([
    'Whitefly',
    'next wave, by counts: grown',
    '3 June',
    '1 June to 5 June',
    '30 May to 8 June',
  ]);
});
