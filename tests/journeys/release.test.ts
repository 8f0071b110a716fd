/** A release from the first thought to the look after it: tried, ordered, come, set out, followed up. */
import { expect, it } from 'vitest';
import type { Order, Release } from '../../services/model/index.ts';
import { journeys, people, smallSeason } from './visit.ts';

const walk = journeys();

it.each(people)('a release is planned by what-if and followed up, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-24T09:00:00Z', season: smallSeason },
    async ({ house, page, turnTo, press, heads, reads, look, sentence }) => {
      const kept = async <T>(noun: string) => {
        const { records } = await house.ask<{ records: { data: T }[] }>(`/api/places/crooked-pane/${noun}`);
        return records.map(({ data }) => data);
      };
      expect(await sentence()).toMatch(/^Order 2 cards of Encarsia by Mon 25 May/);
      await turnTo('What is coming');
      await press('Try a release');
      await reads('With 120 Encarsia on Thu 28 May');
      await press('twice as many');
      await reads('With 240 Encarsia on Thu 28 May');
      await look('release-1-what-if');
      await press('I have ordered these');
      await reads('240 Encarsia ordered');
      expect(await kept<Order>('orders')).toMatchObject([{ number: 240, expectedOn: '2026-05-28' }]);

      await turnTo('Releases and orders');
      await heads(/^Encarsia: on the way, due Thu 28 May/);
      house.later('2026-05-28T10:00:00Z');
      await page.reload();
      await reads('look at it the same day, keep a few in a jar');
      await press('The parcel is here');
      await heads('Encarsia: here, ready to be set out.');
      await look('release-2-parcel');
      await press('Enter a release');
      await press('Keep the release');
      await reads('240 Encarsia released 28 May');
      expect(await kept<Release>('releases')).toMatchObject([
        { enemy: 'encarsia-formosa', number: 240, time: '2026-05-28T10:00:00.000Z', form: 'pupa on card' },
      ]);
      await sentence();
      await look('release-3-week');

      house.later('2026-06-18T09:00:00Z');
      await page.reload();
      await turnTo('The round');
      await press(/^By the door/);
      await press(/^A fresh trap/);
      await press('6–20');
      await press('All else: 0');
      await press('Keep this trap');
      await press(/^Look under leaves/);
      await press('Whitefly scales: seen');
      await press('Black scales: seen');
      await press(/^Keep 10 leaves/);
      await press(/^Keep$/);
      await heads('Kept: 2 entries.');
      expect(await sentence()).toMatch(/^Leave it: friends are at work/);
      await look('release-4-followed-up');
    },
  ),
);
