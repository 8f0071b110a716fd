/** A board that begins to speak °F is not believed; one key mends what it said, and the curve has it. */
import { expect, it } from 'vitest';
import type { Sensor } from '../../services/model/index.ts';
import { journeys, people, smallSeason } from './visit.ts';

const walk = journeys();
const base = '/api/places/crooked-pane';
const topic = 'glasstide/crooked-pane/readings/shelf';
const speak = (hour: number, temperature: number) =>
  JSON.stringify({ temperatureC: temperature, time: `2026-05-18T0${hour}:00:00Z` });

it.each(people)('a broken sensor is mended from the refused messages, by $by', (person) =>
  walk(
    person,
    { at: '2026-05-18T08:10:00Z', season: smallSeason },
    async ({ house, turnTo, press, heads, reads, look }) => {
      await house.publish(topic, [speak(3, 18), speak(4, 18.4), speak(5, 18.8)]);
      await turnTo('Sensors');
      await heads(/^One reads well, one is silent\.$/);
      // After a change of its program the board sends 19.2, 19.6 and 20 °C as °F.
      await house.publish(topic, [speak(6, 66.56), speak(7, 67.28), speak(8, 68)]);
      await heads(/3 messages are/);
      await reads('19.2 °C');
      await look('sensor-1-refused');
      await press('Read all 3 as °F');
      await reads('3 mended');
      await heads(/^One reads well, one is silent\.$/);
      await look('sensor-2-mended');

      const { records } = await house.ask<{ records: { data: Sensor }[] }>(`${base}/sensors`);
      expect(records.find(({ data }) => data.id === 'shelf')?.data.unit).toBe('Far');
      const { readings } = await house.ask<{ readings: { temperatureC: number }[] }>(
        `${base}/readings?from=2026-05-18T00:00:00Z&to=2026-05-19T00:00:00Z&sensor=shelf&resolution=raw`,
      );
      const kept = readings.map(({ temperatureC }) => Number(temperatureC.toFixed(6)));
      expect(kept).toEqual([18, 18.4, 18.8, 19.2, 19.6, 20]);
    },
  ),
);
