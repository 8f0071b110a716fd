/** An insect nobody knows is kept as such; looked at again, the key finds it, and the first entry is taken back. */
import { expect, it } from 'vitest';
import { journeys, people, smallSeason } from './visit.ts';

const walk = journeys();

it.each(people)('an unknown insect is identified, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-24T09:00:00Z', season: smallSeason },
    async ({ house, turnTo, press, type, heads, reads, look }) => {
      const seen = async () => {
        const { records } = await house.ask<{ records: { data: { what: string; note?: string } }[] }>(
          '/api/places/crooked-pane/sightings',
        );
        return records.map(({ data: { what, note } }) => ({ what, note }));
      };
      await turnTo('Who is it?');
      await press('On a leaf, bud or flower');
      await press('Not at all');
      await press('A flat oval disc');
      await press('None');
      await heads('One of these three. Which test fits?');
      await look('who-1-left');
      await press('None of these, or not sure');
      await heads(/^Not known yet/);
      await press('Keep the sighting');
      await reads('not known seen.');
      expect(await seen()).toEqual([
        { what: 'not known', note: expect.stringMatching(/^Perhaps: .*Scale with Encarsia/) },
      ]);

      await press('Look at another');
      await heads('Where is it?');
      await press('On a leaf, bud or flower');
      await press('Not at all');
      await press('A flat oval disc');
      await press('Not sure');
      await press('It is this one: Scale with Encarsia');
      await heads('Scale with Encarsia: a friend.');
      await type(/^Where, how many/, 'low leaves');
      await press('Keep the sighting');
      await reads('black scales seen.');
      expect(await seen()).toContainEqual({ what: 'black scales', note: 'low leaves' });

      await turnTo('Releases and orders');
      await press(/^undo Not known seen/);
      await reads('Undone:');
      await look('who-2-named');
      expect((await seen()).map(({ what }) => what)).toEqual(['black scales']);
    },
  ),
);
