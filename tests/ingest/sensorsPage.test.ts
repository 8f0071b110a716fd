/** docs/sensors.md keeps its word: what it tells people to send is read, what it lists is known. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { parseTopic } from '../../services/ingest/topics.ts';
import { refusals } from '../../services/refusals.ts';
import { openStation, placeId, type Station, startMs } from './station.ts';

const page = readFileSync('docs/sensors.md', 'utf8');
const examples = [...page.matchAll(/```json\n([\s\S]*?)\n```/g)].map((match) => match[1] ?? '');
let station: Station;

beforeEach(async () => {
  station = await openStation();
  station.time.nowMs = startMs + 3_600_000;
});
afterEach(() => station.close());

/** The topic an example is meant for. */
function topicOf(example: string): string {
  if (example.includes('points')) return `glasstide/${placeId}/outdoor`;
  if (example.includes('exposureDays')) return `glasstide/${placeId}/counts/door`;
  return example.includes('"leaves"') ? `glasstide/${placeId}/leaves` : `glasstide/${placeId}/readings/bench`;
}

it('has examples of readings, a trap count, a leaf check and the air outdoors', () => {
  expect(new Set(examples.map(topicOf)).size).toBe(4);
});

it.each(examples)('%s is stored', async (example) => {
  await station.publish(topicOf(example), example);
  expect(station.quarantine()).toEqual([]);
  expect(station.changes.map(({ what }) => what)).toContain(
    example.includes('Cel') || example.includes('temperatureC') ? 'reading' : 'record',
  );
});

it('lists only topics that are understood', () => {
  const topics = [...page.matchAll(/^\| `(glasstide\/[^`]+)`/gm)].map((match) => match[1] ?? '');
  expect(topics.length).toBeGreaterThan(4);
  for (const topic of topics) {
    expect(parseTopic(topic.replaceAll(/<(\w+)>/g, '$1')), topic).toHaveProperty('kind');
  }
});

it('lists only codes of the catalogue', () => {
  const codes = [...page.matchAll(/^\| `([a-z]+-[a-z-]+)` +\|/gm)].map((match) => match[1] ?? '');
  expect(codes.length).toBeGreaterThan(10);
  for (const code of codes) expect(refusals).toHaveProperty(code);
});
