/** From an empty house to the first sentence: four screens, one count. */
import { expect, it } from 'vitest';
import type { Place, TrapCount } from '../../services/model/index.ts';
import { journeys, people } from './visit.ts';

const walk = journeys();

it.each(people)('a first place is set up from nothing, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-13T06:10:00Z' },
    async ({ house, press, type, heads, reads, look, sentence }) => {
      await heads('What do you call the place?');
      await look('first-1-name');
      await type('Name', 'The end house');
      await type(/^Size/, '12');
      await press('Next: what grows');
      await heads('What grows there?');
      await press('Tomato');
      await press('Next: pests');
      await press('Whitefly');
      await press('Next: where it stands');
      await type(/^Latitude/, '52');
      await type(/^Longitude/, '-0.5');
      await type(/^Where your first/, 'by the door');
      await press('Keep, and count');

      await heads('The round');
      await press(/^by the door/);
      await press(/^Count it for the first time/);
      await press('Exact number');
      await press('9');
      await press('Keep 9');
      await press('All else: 0');
      await type(/^Days it hung/, '7');
      await press('Keep this trap');
      await press('That is all');
      await reads('Kept: 1 entry.');
      await look('first-2-kept');

      const { places } = await house.ask<{ places: Place[] }>('/api/places');
      expect(places).toMatchObject([{ name: 'The end house', areaM2: 12, timeZone: 'Europe/London' }]);
      const counts = await house.ask<{ records: { data: TrapCount }[] }>(
        `/api/places/${places[0]?.id}/trap-counts`,
      );
      expect(counts.records.map(({ data }) => data)).toMatchObject([
        { exposureDays: 7, counts: { whitefly: 9, aphid: 0 } },
      ]);
      expect(await sentence()).toMatch(/^Count again|^Order/);
      await reads('The last count was 9 whitefly');
      await look('first-3-week');
    },
  ),
);
