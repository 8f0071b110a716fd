import { describe, expect, test } from 'vitest';
import { heardTopics, mayDo, mayPublish, userOf } from '../../services/access/rights.ts';
import { newSecret, secretHash, withoutSecrets } from '../../services/access/secrets.ts';
import { topicMatches } from '../../services/ingest/topics.ts';

const bench = { placeId: 'lean-to', sensorId: 'bench' };
const gateway = { placeId: 'lean-to' };
const may = (device: typeof gateway, topic: string, mapped: string[] = []) =>
  mayPublish(device, topic, { matches: topicMatches, mapped: () => mapped });

describe('roles', () => {
  test.each([
    ['nobody', ['nobody']],
    ['reader', ['nobody', 'reader']],
    ['helper', ['nobody', 'reader', 'helper']],
    ['owner', ['nobody', 'reader', 'helper', 'owner']],
  ] as const)('%s may do what these may: %s', (role, less) => {
    const all = ['nobody', 'reader', 'helper', 'owner'] as const;
    expect(all.filter((needed) => mayDo(role, needed))).toEqual(less);
  });
});

describe('a board', () => {
  test.each([
    ['glasstide/lean-to/readings/bench', true],
    ['glasstide/lean-to/health/bench', true],
    ['glasstide/lean-to/readings/door', false],
    ['glasstide/lean-to/readings/bench/more', false],
    ['glasstide/orchard/readings/bench', false],
    ['glasstide/lean-to/counts/door', false],
    ['glasstide/lean-to/advice', false],
    ['weather/bench', false],
    ['$SYS/x', false],
  ])('of one sensor on %s: %s', (topic, yes) => {
    expect(may(bench, topic)).toBe(yes);
  });

  test.each([
    ['glasstide/lean-to/readings/bench', true],
    ['glasstide/lean-to/readings/door', true],
    ['glasstide/lean-to/counts/door', true],
    ['glasstide/lean-to/leaves', true],
    ['glasstide/lean-to/advice', false],
    ['glasstide/orchard/readings/bench', false],
  ])('of a whole place on %s: %s', (topic, yes) => {
    expect(may(gateway, topic)).toBe(yes);
  });

  test('publishes where its sensor is mapped to, and a wide mapping opens nobody else’s topic', () => {
    expect(may(bench, 'zigbee/0x17/temperature', ['zigbee/0x17/+'])).toBe(true);
    expect(may(bench, 'zigbee/0x18/temperature', ['zigbee/0x17/+'])).toBe(false);
    expect(may(bench, 'glasstide/lean-to/readings/door', ['#'])).toBe(false);
    expect(may(bench, 'glasstide/lean-to/advice', ['glasstide/#'])).toBe(false);
    expect(may(bench, '$SYS/broker', ['$SYS/#'])).toBe(false);
  });

  test('hears what is said aloud in its place', () => {
    expect(heardTopics(bench)).toEqual(['glasstide/lean-to/advice', 'glasstide/lean-to/warnings']);
  });

  test('is called by its place and sensor', () => {
    expect([userOf(bench), userOf(gateway)]).toEqual(['lean-to/bench', 'lean-to']);
  });
});

describe('secrets', () => {
  test('are long, of letters that fit an address, and never the same', () => {
    const many = new Set(Array.from({ length: 100 }, newSecret));
    expect(many.size).toBe(100);
    for (const secret of many) expect(secret).toMatch(/^[\w-]{32}$/);
  });

  // FIPS 180-4, as published with the standard: SHA-256 of "abc".
  test('are kept as SHA-256', () => {
    const published = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(secretHash('abc')).toBe(Buffer.from(published, 'hex').toString('base64url'));
  });

  test('do not stand in a line of the log', () => {
    const secret = newSecret();
    expect(withoutSecrets(`/calendar/${secret}.ics?x=1`)).toBe('/calendar/....ics?x=1');
    expect(withoutSecrets('/api/places/lean-to/season')).toBe('/api/places/lean-to/season');
  });
});
