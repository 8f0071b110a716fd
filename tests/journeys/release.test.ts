/** A release from the first thought to the look after it: tried, ordered, come, set out, followed up. */
import { expect, it } from 'vitest';
import type { Advice, Order, Release } from '../../services/model/index.ts';
import { journeys, people, smallSeason } from './visit.ts';

const walk = journeys();
const base = '/api/places/crooked-pane';
/** A supplier who sells nothing but Encarsia: the way is theirs whatever would be best. */
const supplier = { ...smallSeason.place.supplier!, pricePerAnimal: { 'encarsia-formosa': 0.09 } };
const season = { ...smallSeason, place: { ...smallSeason.place, supplier } };

it.each(people)('a release is planned by what-if and followed up, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-24T09:00:00Z', season },
    async ({ house, page, turnTo, press, type, heads, reads, look, sentence }) => {
      const kept = async <T>(noun: string) => {
        const { records } = await house.ask<{ records: { data: T }[] }>(`${base}/${noun}`);
        return records.map(({ data }) => data);
      };
      await turnTo('What is coming');
      await press('Try a release');
      await reads(/With \d+ Encarsia on/);
      await press('a week later');
      await type('How many', '240');
      await reads('With 240 Encarsia on');
      const day = await page.getByLabel('Set out on').inputValue();
      await look('release-1-what-if');
      await press('I have ordered these');
      await reads('240 Encarsia ordered');
      expect(await kept<Order>('orders')).toMatchObject([{ number: 240, expectedOn: day }]);

      await turnTo('Releases and orders');
      await heads(/^Encarsia: on the way, due/);
      house.later(`${day}T10:00:00Z`);
      await page.reload();
      await reads('look at it the same day, keep a few in a jar');
      await press('The parcel is here');
      await heads('Encarsia: here, ready to be set out.');
      await look('release-2-parcel');
      await press('Enter a release');
      await press('Keep the release');
      await reads('240 Encarsia released');
      expect(await kept<Release>('releases')).toMatchObject([
        { enemy: 'encarsia-formosa', number: 240, time: `${day}T10:00:00.000Z`, form: 'pupa on card' },
      ]);
      await sentence();
      await look('release-3-week');

      house.later('2026-06-28T09:00:00Z');
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
      await sentence();
      await reads('has settled');
      const { advice } = await house.ask<{ advice: Advice }>(`${base}/outcome`);
      expect(advice.followUp?.releases).toMatchObject([{ number: 240, on: day, settlement: 'settled' }]);
      await look('release-4-followed-up');
    },
  ),
);
