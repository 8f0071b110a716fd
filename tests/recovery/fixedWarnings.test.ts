/**
 * A small fixed part of the study of warnings (docs/warning-scores.md), played and told again. The stored numbers are our
 * own, written by `npm run study:warnings -- --fixed`: they prove that nothing changed unseen.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fixedWarnings } from '../../studies/warningFixed.ts';
import { deadlinesOf, pairsOf, type WarningScore } from '../../studies/warningScores.ts';
import type { Diary, Issue } from '../../studies/warningSeason.ts';
import type { Left, Told } from '../../studies/warningTelling.ts';
import { place, planFor } from '../warnings/house.ts';

const stored: WarningScore[] = JSON.parse(
  readFileSync(new URL('./fixed-warnings.json', import.meta.url), 'utf8'),
);

describe('the fixed part of the study of warnings', { timeout: 180_000 }, () => {
  it('asks for the same parcels on the same days, tells as much, and known days three days ahead', async () => {
    const named = ({ task, deadlines, letters }: WarningScore) => ({
      trial: task.trial,
      deadlines: deadlines.map(({ enemy, orderBy }) => `${enemy} by ${orderBy}`),
      letters,
    });
    const found = await fixedWarnings();
    expect(found.map(named)).toEqual(stored.map(named));
    found.forEach(({ messages, pairs }, n) => {
      for (const channel of ['mail', 'push'] as const)
        expect(Math.abs(messages[channel] - stored[n]!.messages[channel])).toBeLessThanOrEqual(2);
      expect(pairs.filter(({ explained }) => !explained)).toEqual([]);
    });
    const known = found.flatMap(({ deadlines }) => deadlines).filter(({ knownDays }) => knownDays >= 3);
    expect(known.length).toBeGreaterThan(0);
    for (const { toldDays } of known) {
      expect(toldDays.mail).toBeGreaterThanOrEqual(3);
      expect(toldDays.push).toBeGreaterThanOrEqual(3);
    }
  });
});

describe('how the study judges', () => {
  const dayMs = 86_400_000;
  const mondayMs = Date.parse('2026-05-11T09:00:00Z');
  const about = 'order-by-encarsia-formosa-2026-05-15@1';
  const left = (day: number, event: Left['event'], which = about): Left => ({
    atMs: mondayMs + day * dayMs,
    channel: 'push',
    event,
    about: which,
  });
  const issued = (day: number, orderBy?: string): Issue =>
    ({
      asOfMs: mondayMs + day * dayMs,
      advice: {
        toOrder: orderBy === undefined ? [] : [{ ...planFor('encarsia-formosa', { orderBy }) }],
      },
    }) as unknown as Issue;
  const diary = (issues: Issue[], orderedOn?: string) =>
    ({
      issued: issues,
      season: {
        place,
        orders:
          orderedOn === undefined
            ? []
            : [{ id: 'o', enemy: 'encarsia-formosa', number: 100, orderedAt: orderedOn }],
      },
    }) as unknown as Diary;
  const warnings = (ended: string) =>
    [{ id: about.split('@')[0], rule: 'order-by', ended }] as unknown as Told['warnings'];

  it('counts days from the first advice and the first message to the supplier’s hour', () => {
    const played = diary([issued(0, '2026-05-15'), issued(3, '2026-05-15')], '2026-05-15T08:00:00Z');
    const [found] = deadlinesOf(played, { left: [left(0.5, 'raised')] });
    // Monday 9:00 to Friday noon, London summer time, is 4 days and 2 hours.
    expect(found?.knownDays).toBeCloseTo(4 + 2 / 24, 6);
    expect(found?.toldDays).toEqual({ push: expect.closeTo(3.5 + 2 / 24, 6), mail: undefined });
  });

  it('finds an order that is not wanted any more, and whether the message says so', () => {
    const played = diary([issued(0, '2026-05-15'), issued(1)]);
    const silent = { left: [left(0, 'raised'), left(1.1, 'letter', '2026-05-12')], warnings: warnings('') };
    expect(pairsOf(played, silent, 'push')).toMatchObject([{ what: 'no-longer-wanted', explained: false }]);
    const said = { left: [left(0, 'raised'), left(1.1, 'withdrawn')], warnings: warnings('It was cold.') };
    expect(pairsOf(played, said, 'push')).toMatchObject([{ what: 'no-longer-wanted', explained: true }]);
  });

  it('lets be what was ordered, what is wanted still, and what is four days apart', () => {
    const letter = left(1.1, 'letter', '2026-05-12');
    const told = { left: [left(0, 'raised'), letter], warnings: warnings('') };
    expect(pairsOf(diary([issued(0, '2026-05-15')]), told, 'push')).toEqual([]);
    const ordered = diary([issued(0, '2026-05-15'), issued(1)], '2026-05-12T08:00:00Z');
    expect(pairsOf(ordered, told, 'push')).toEqual([]);
    const late = { left: [left(0, 'raised'), { ...letter, atMs: mondayMs + 3.5 * dayMs }], warnings: [] };
    expect(pairsOf(diary([issued(0, '2026-05-15'), issued(1)]), late, 'push')).toEqual([]);
  });

  it('takes a thing told anew within three days after it was taken back as unexplained', () => {
    const again = left(2, 'raised', 'order-by-encarsia-formosa-2026-05-18@2');
    const told = { left: [left(0, 'withdrawn'), again], warnings: warnings('It was cold.') };
    const pairs = pairsOf(diary([issued(0), issued(2, '2026-05-18')]), told, 'push');
    expect(pairs).toMatchObject([{ what: 'wanted-again', explained: false }]);
  });
});
