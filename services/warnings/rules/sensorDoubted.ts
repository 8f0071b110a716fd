import { doubtWords } from '../../model/index.ts';
import { dayMs, done, type WarningRule } from './rule.ts';

/** Fewer readings in a day tell nothing about a sensor. */
const fewest = 4;

/** Most of what a sensor said in the last day is not believed: it hangs in the sun, or its wires are loose. */
export const sensorDoubted: WarningRule = {
  id: 'sensor-doubted',
  matters: ({ season: { sensors }, latest, lastDay, nowMs }) =>
    sensors.flatMap(({ id, name }) => {
      const hours = lastDay.filter(({ sensorId }) => sensorId === id);
      const doubted = hours.reduce((sum, hour) => sum + hour.doubted, 0);
      const all = hours.reduce((sum, hour) => sum + hour.count, doubted);
      if (all < fewest || doubted <= all / 2) return [];
      const doubt = latest.find(({ sensorId }) => sensorId === id)?.doubt;
      return [
        {
          id: `sensor-doubted-${id}`,
          opensMs: Number.NEGATIVE_INFINITY,
          deadlineMs: nowMs + dayMs,
          text: `Look at ${name}: ${doubted} of its ${all} readings of the last day are not believed.`,
          reason: doubt === undefined ? 'They do not fit each other or the other sensor.' : doubtWords(doubt),
          ends: 'When most of its readings are believed again.',
        },
      ];
    }),
  ending: () => done('Its readings are believed again.'),
};
