/** Order and time of events in an open series of counts (docs/real-counts.md tells more of it). */
import { eventsOf, simulatedCage } from '../../population/realCounts.ts';
import { brevicoryneBrassicae } from '../../population/records/cabbageAphids.ts';
import type { NumberRow, OutcomeRow, Row } from './row.ts';
import * as from from './sources.ts';

const cages = {
  id: 'E28',
  species: 'cabbage aphid and Diaeretiella, both from memory',
  source: from.parasitoidCages,
  mark: 'SEEN',
} as const;

const smallPlants =
  'in the cages eight small plants end the growth before the first mummy; the forecast counts ground, not leaf';

const eventsAt = (temperatureC: number) =>
  eventsOf(simulatedCage({ record: brevicoryneBrassicae, temperatureC }));

export const openSeries: readonly Row[] = [20, 23].flatMap((temperatureC): (NumberRow | OutcomeRow)[] => [
  {
    ...cages,
    kind: 'number',
    what: `peak of aphids at ${temperatureC} °C, days after the first count`,
    published: 14,
    unit: 'd',
    tolerance: { within: 7 },
    ours: () => eventsAt(temperatureC).peakDay,
    reason: smallPlants,
  },
  {
    ...cages,
    kind: 'number',
    what: `from the peak of aphids to that of mummies at ${temperatureC} °C`,
    note: 'printed 3 to 4 weeks',
    published: 24.5,
    unit: 'd',
    tolerance: { from: 14, to: 35 },
    ours: () => eventsAt(temperatureC).mummyPeakDay - eventsAt(temperatureC).peakDay,
    reason: smallPlants,
  },
  {
    ...cages,
    kind: 'outcome',
    what: `aphids peak, then mummies, then aphids fall below a tenth, at ${temperatureC} °C`,
    published: 'in this order, the fall within a week of the mummies',
    ours: () => {
      const { peakDay, mummyPeakDay, collapseDay } = eventsAt(temperatureC);
      return peakDay < mummyPeakDay && Math.abs(collapseDay - mummyPeakDay) <= 7;
    },
  },
]);
