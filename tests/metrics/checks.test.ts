import { describe, expect, test } from 'vitest';
import { ago, checksOf, type Facts } from '../../services/metrics/checks.ts';

const nowMs = Date.parse('2026-05-13T06:10:00Z');
const hourMs = 3_600_000;
const good: Facts = {
  nowMs,
  locked: true,
  places: [
    {
      id: 'lean-to',
      name: 'Lean-to',
      forecastAtMs: nowMs - hourMs,
      sensors: [{ id: 'bench', name: 'Bench', lastMs: nowMs - 12 * 60_000 }],
    },
  ],
  waiting: 0,
  turnedAway: { total: 0, latest: [] },
  backup: { lastAtMs: nowMs - 3 * hourMs, copies: 9 },
  disk: { freeBytes: 12e9 },
  troubles: [],
};
const of = (changes: Partial<Facts>, id: string) =>
  checksOf({ ...good, ...changes }).find((each) => each.id === id);
const place = (changes: Partial<Facts['places'][number]>) => ({
  places: [{ ...good.places[0]!, ...changes }],
});

test('when all is well, every point says so', () => {
  const checks = checksOf(good);
  expect(checks.map(({ id }) => id)).toEqual([
    ...[
      'runs',
      'forecast-lean-to',
      'sensor-lean-to-bench',
      'refused',
      'turned-away',
      'lock',
      'backup',
      'disk',
    ],
  ]);
  expect(new Set(checks.map(({ state }) => state))).toEqual(new Set(['well']));
  expect(checks.find(({ id }) => id === 'sensor-lean-to-bench')?.says).toBe('Last read 12 minutes ago.');
});

describe('what is amiss has a point of its own', () => {
  test.each<[string, Partial<Facts>, string, string, RegExp]>([
    [
      'a trouble',
      { troubles: ['The broker does not answer.'] },
      'runs',
      'unwell',
      /^The broker does not answer\.$/,
    ],
    [
      'no forecast yet',
      { places: [{ id: 'lean-to', name: 'L', sensors: [] }] },
      'forecast-lean-to',
      'unsure',
      /None yet/,
    ],
    [
      'an old forecast',
      place({ forecastAtMs: nowMs - 31 * hourMs }),
      'forecast-lean-to',
      'unwell',
      /31 hours ago/,
    ],
    [
      'a silent sensor',
      place({ sensors: [{ id: 'bench', name: 'Bench', lastMs: nowMs - 25 * hourMs }] }),
      'sensor-lean-to-bench',
      'unwell',
      /battery/,
    ],
    [
      'a sensor that never spoke',
      place({ sensors: [{ id: 'bench', name: 'Bench' }] }),
      'sensor-lean-to-bench',
      'unsure',
      /not spoken/,
    ],
    ['one refused message', { waiting: 1 }, 'refused', 'unsure', /^1 message could/],
    [
      'a board without a password',
      { turnedAway: { total: 3, latest: [{ atMs: nowMs, user: '', why: 'sign-in' }] } },
      'turned-away',
      'unsure',
      /3 times.*one without a name/,
    ],
    ['no passphrase', { locked: false }, 'lock', 'unsure', /only this machine/],
    ['no copies', { backup: undefined }, 'backup', 'unsure', /names a folder/],
    ['no copy so far', { backup: { copies: 0 } }, 'backup', 'unsure', /tonight/],
    [
      'an old copy',
      { backup: { copies: 2, lastAtMs: nowMs - 51 * hourMs } },
      'backup',
      'unwell',
      /2 days ago/,
    ],
    [
      'a copy that was not made',
      { backup: { copies: 2, lastAtMs: nowMs, trouble: 'No room.' } },
      'backup',
      'unwell',
      /No room/,
    ],
    ['a full disk', { disk: { freeBytes: 1e8 } }, 'disk', 'unwell', /0\.1 GB/],
  ])('%s', (_, changes, id, state, says) => {
    expect(of(changes, id)).toMatchObject({ state, says: expect.stringMatching(says) });
  });

  test('and nothing is said of a disk that cannot be looked at', () => {
    expect(of({ disk: undefined }, 'disk')).toBeUndefined();
  });
});

test.each([
  [-5, 'just now'],
  [119_999, 'just now'],
  [120_000, '2 minutes ago'],
  [1.25 * hourMs, '1 hour ago'],
  [2 * hourMs, '2 hours ago'],
  [47 * hourMs, '47 hours ago'],
  [48 * hourMs, '2 days ago'],
])('%i ms is %s', (ms, words) => {
  expect(ago(ms)).toBe(words);
});
