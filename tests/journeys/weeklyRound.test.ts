/** The weekly round without signal; with signal again, the new sentence knows it. */
import { expect, it } from 'vitest';
import type { LeafCheck, TrapCount } from '../../services/model/index.ts';
import { journeys, people, smallSeason } from './visit.ts';

const walk = journeys();

it.each(people)('the week is counted offline and joins up, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-24T09:00:00Z', season: smallSeason },
    async ({ page, house, turnTo, press, heads, reads, look, sentence }) => {
      const kept = async <T>(noun: string) => {
        const { records } = await house.ask<{ records: { data: T }[] }>(`/api/places/crooked-pane/${noun}`);
        return records.map(({ data }) => data);
      };
      const before = await sentence();
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      await turnTo('The round');
      await heads('The round');
      await page.context().setOffline(true);

      await press(/^By the door/);
      await press(/^A fresh trap/);
      // The screen has changed under the hand: the reader stands at the heading of the new one.
      await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
      await press('51–100');
      await press('All else: 0');
      await press('Keep this trap');
      await heads('What next?');
      await press(/^Look under leaves/);
      await reads('Five plants: one young top leaf and one old low leaf each');
      await reads('Black scales hatch: leave them on the plant.');
      await press('Whitefly scales: seen');
      await press('Black scales: none');
      await press('Keep 10 leaves');
      await press(/^Keep$/);
      await heads('Kept: 2 entries.');
      await reads('on this phone');
      await look('round-1-offline');
      expect(await kept('trap-counts')).toHaveLength(smallSeason.trapCounts.length);
      await press('Read the week');
      await reads(before);
      await reads('No signal');
      await look('round-2-week-offline');

      await page.context().setOffline(false);
      await turnTo('The round');
      await heads('The round');
      await expect.poll(() => kept('leaf-checks')).toHaveLength(smallSeason.leafChecks.length + 1);
      expect((await kept<TrapCount>('trap-counts')).map(({ counts }) => counts)).toContainEqual({
        whitefly: { low: 51, high: 100 },
        aphid: 0,
        thrips: 0,
        'small-wasp': 0,
        unknown: 0,
      });
      expect((await kept<LeafCheck>('leaf-checks')).map(({ seen }) => seen)).toContainEqual([
        { kind: 'whitefly-scale', infestedLeaves: 1 },
        { kind: 'black-scale', infestedLeaves: 0 },
      ]);
      await sentence();
      await reads('Last count, 24 May');
      await look('round-3-week');
      await turnTo('The round');
      await press(/^By the door/);
      await reads('Counted today already');
    },
  ),
);
