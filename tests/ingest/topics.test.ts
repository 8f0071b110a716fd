import { describe, expect, it } from 'vitest';
import { parseTopic, topicMatches } from '../../services/ingest/topics.ts';

/** The examples of MQTT 3.1.1 (OASIS, October 2014) §4.7.1.2, §4.7.1.3 and §4.7.2; from memory. */
const published: [string, string, boolean][] = [
  ['sport/tennis/player1/#', 'sport/tennis/player1', true],
  ['sport/tennis/player1/#', 'sport/tennis/player1/ranking', true],
  ['sport/tennis/player1/#', 'sport/tennis/player1/score/wimbledon', true],
  ['sport/#', 'sport', true],
  ['#', 'sport/tennis', true],
  ['sport/tennis/+', 'sport/tennis/player1', true],
  ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
  ['sport/+', 'sport', false],
  ['sport/+', 'sport/', true],
  ['+/+', '/finance', true],
  ['/+', '/finance', true],
  ['+', '/finance', false],
  ['#', '$SYS/monitor/Clients', false],
  ['+/monitor/Clients', '$SYS/monitor/Clients', false],
  ['$SYS/#', '$SYS/monitor/Clients', true],
  ['$SYS/monitor/+', '$SYS/monitor/Clients', true],
];

describe('topics', () => {
  it.each(published)('filter %s and topic %s', (filter, topic, matches) => {
    expect(topicMatches(filter, topic)).toBe(matches);
  });

  it.each([
    ['glasstide/lean-to/readings/bench-1', { kind: 'reading', placeId: 'lean-to', sensorId: 'bench-1' }],
    ['glasstide/lean-to/counts/door', { kind: 'count', placeId: 'lean-to', trapId: 'door' }],
    ['glasstide/lean-to/leaves', { kind: 'leaves', placeId: 'lean-to' }],
    ['glasstide/lean-to/health/bench-1', { kind: 'health', placeId: 'lean-to', sensorId: 'bench-1' }],
    ['glasstide/lean-to/advice', { kind: 'outgoing', placeId: 'lean-to' }],
    ['glasstide/lean-to/warnings', { kind: 'outgoing', placeId: 'lean-to' }],
  ])('%s', (topic, meaning) => {
    expect(parseTopic(topic)).toEqual(meaning);
  });

  it.each([
    'glasstide/lean-to/reading/bench',
    'glasstide/lean-to/readings',
    'glasstide/lean-to/readings/bench/1',
    'glasstide/Lean-To/readings/bench',
    'glasstide/lean-to/readings/Bench 1',
    'glasstide//readings/bench',
    'home/greenhouse/t',
    '',
  ])('%j means nothing here', (topic) => {
    expect(parseTopic(topic)).toMatchObject({ code: 'topic-unknown', reason: expect.stringMatching(/\.$/) });
  });
});
