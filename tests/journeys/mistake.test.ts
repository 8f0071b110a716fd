/** A count typed wrongly moves the forecast; taken back, everything stands as before it. */
import { expect, it } from 'vitest';
import type { Advice, Forecast } from '../../services/model/index.ts';
import { journeys, people, smallSeason } from './visit.ts';

const walk = journeys();

it.each(people)('a mistake is undone, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-24T09:00:00Z', season: smallSeason },
    async ({ house, turnTo, press, heads, reads, look, sentence }) => {
      const said = () =>
        house.ask<{ forecast: Forecast; advice: Advice }>('/api/places/crooked-pane/outcome');
      const days = (advice: Advice) => advice.daysToKeep.map(({ day, text }) => `${day} ${text}`);
      const before = await said();

      await turnTo('The round');
      await press(/^By the door/);
      await press(/^A fresh trap/);
      await press('0');
      await press('All else: 0');
      await press('Keep this trap');
      await press('That is all');
      await heads('Kept: 1 entry.');
      await sentence();
      await reads('then 0 whitefly a trap and week');
      expect((await said()).forecast).not.toEqual(before.forecast);

      await turnTo('Releases and orders');
      await press(/^undo By the door, Sun 24 May/);
      await reads('Undone:');
      await look('mistake-undone');
      expect(await sentence()).toBe(before.advice.sentence);
      const after = await said();
      expect(days(after.advice)).toEqual(days(before.advice));
      expect(after.forecast).toEqual(before.forecast);

      // Another page, another day: what was taken back is still within reach.
      await turnTo('This week');
      await turnTo('Releases and orders');
      await press('What was taken back can be put back');
      await press(/^put back By the door, Sun 24 May/);
      await reads('Put back:');
      await reads('Nothing was taken back.');
      await press(/^undo By the door, Sun 24 May/);
      await reads('Undone:');
    },
  ),
);
