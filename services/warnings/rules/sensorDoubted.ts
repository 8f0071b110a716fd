import { doubtWords } from '../../model/index.ts';
import { dayMs, done, type WarningRule } from './rule.ts';

/** Fewer readings in a day tell nothing about a sensor. */
const fewest = 4;

/** Most of what a sensor said in the last day is not believed: it hangs in the sun, or its wires are loose. */
export const sensorDoubted: WarningRule = {
  id: 'sensor-doubted',
  matters: ({ season: { sensors }, lastDay, nowMs }) =>
    sensors.flatMap(({ id, name }) => {
      const said = lastDay.filter(({ sensorId }) => sensorId === id);
      const doubts = said.flatMap(({ doubt }) => doubt ?? []);
      if (said.length < fewest || doubts.length <= said.length / 2) return [];
      return [
        {
          id: `sensor-doubted-${id}`,
          opensMs: Number.NEGATIVE_INFINITY,
          deadlineMs: nowMs + dayMs,
          text: `Look at ${name}: ${doubts.length} of its ${said.length} readings of the last day are not believed.`,
          reason: doubtWords(doubts.at(-1) ?? ''),
          ends: 'Ends when most of its readings are believed again.',
        },
      ];
    }),
  ending: () => done('Its readings are believed again.'),
};
