/**
 * Days by the lines in use of natural enemies, worked out by hand as degree-days / (T - threshold) to the precision of
 * the table; not published values. They catch a slip of the pen in a threshold, in a split into stages or in a plateau.
 */
import { expect, it } from 'vitest';
import { degreeDayRate } from '../../services/model/climate/developmentRate.ts';
import { allRecords } from '../../services/model/species/catalogue.ts';

it.each([
  ['neoseiulus-californicus', [15.1, 7.3, 4.8, 3.6]],
  ['amblyseius-andersoni', [18, 10, 6.9, 5.2]],
  ['eretmocerus-eremicus', [44, 29, 21, 17]],
  ['aphidius-ervi', [22, 14, 10.5, 8.3]],
  ['aphelinus-abdominalis', [37, 21, 15, 11.5]],
  ['aphidoletes-aphidimyza', [32, 20, 15, 12]],
  ['macrolophus-pygmaeus', [69, 38, 27, 20]],
  ['orius-laevigatus', [80, 34, 22, 16]],
  ['delphastus-catalinae', [undefined, 30, 20, 15]],
  ['cryptolaemus-montrouzieri', [undefined, 65, 36, 25]],
  ['coccinella-septempunctata', [69, 25, 15.5, 11]],
  ['episyrphus-balteatus', [32, 20, 14, 11]],
  ['anthocoris-nemoralis', [60, 30, 20, 15]],
] as const)('%s takes the days of its line at 15, 20, 25 and 30 °C', (id, days) => {
  const { development } = allRecords.find((record) => record.id === id)!;
  const total = development.stages.reduce((sum, { degreeDays }) => sum + degreeDays, 0);
  days.forEach((expected, i) => {
    const ours = total / degreeDayRate(development, 15 + 5 * i);
    if (expected !== undefined) expect(Math.abs(ours / expected - 1)).toBeLessThan(0.04);
  });
});
