/** The fitting routine against certified values, and docs/rate-laws.md against a new fit. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { linearFit, rateBy } from '../../services/model/climate/rateLaws.ts';
import { clockRate } from '../../services/model/population/clock.ts';
import { allRecords, speciesById } from '../../services/model/species/catalogue.ts';
import { developmentTables } from '../../services/model/species/developmentTables.ts';
import { correctedAic, fitLaw } from '../house/rateFits/fits.ts';
import { fittableLaws } from '../house/rateFits/laws.ts';
import { leastSquares } from '../house/rateFits/leastSquares.ts';
import { rateLawsPage, rateLawsText } from '../house/rateFits/page.ts';

const tableOf = (id: string) => developmentTables.find((table) => table.id === id)!;
const lawOf = (name: string) => fittableLaws.find((law) => law.name === name)!;

describe('least squares', () => {
  // NIST Statistical Reference Datasets, Misra1a (dental research, y = b1 (1 - exp(-b2 x))): certified values.
  it('finds the certified parameters and sum of squares of Misra1a to six figures', () => {
    const { parameters, sumOfSquares } = leastSquares({
      x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
      y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
      bounds: [
        { low: 50, high: 1000 },
        { low: 1e-5, high: 0.01 },
      ],
      curve:
        ([b1, b2]) =>
        (x) =>
          b1! * (1 - Math.exp(-b2! * x)),
    });
    expect(Math.abs(parameters[0]! / 238.94212918 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(parameters[1]! / 5.5015643181e-4 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(sumOfSquares / 0.12455138894 - 1)).toBeLessThan(1e-6);
  });

  // Taylor 1981, Am Nat 117:1, prints 0.129, 24.7 and 9.3 for the peach-potato aphid. That it used the days of
  // DeLoach 1974 is our inference from the agreement.
  it('finds the bell that Taylor 1981 printed for the peach-potato aphid in the days of DeLoach 1974', () => {
    const { law } = fitLaw(tableOf('myzus-persicae-deloach'), lawOf('Taylor'))!;
    if (law.kind !== 'taylor') throw new Error('another law');
    expect(Number(law.greatestRate.toFixed(3))).toBe(0.129);
    expect(Number(law.bestC.toFixed(1))).toBe(24.7);
    expect(Number(law.widthC.toFixed(1))).toBe(9.3);
  });

  // Jarosik et al. 2011 (J Econ Entomol 104:1870) print 6.19 °C and 97.1 degree-days for Zamani et al. 2006.
  it('finds the line published for Zamani et al. 2006, as does the closed form', () => {
    const table = tableOf('aphis-gossypii-zamani');
    const { law } = fitLaw(table, lawOf('linear, no upper limit'))!;
    if (law.kind !== 'linear' || !('lowerC' in law)) throw new Error('another law');
    expect(Math.abs(law.lowerC - 6.19)).toBeLessThan(0.05);
    expect(Math.abs(law.degreeDays / 97.1 - 1)).toBeLessThan(0.01);
    const closed = linearFit(table.days.map(([temperature, days]) => ({ temperature, days })));
    expect(law.lowerC).toBeCloseTo(closed.lowerThreshold, 6);
    expect(law.degreeDays).toBeCloseTo(closed.degreeDays, 5);
  });

  // Katayama 1997 prints 9.5 °C and 194 degree-days.
  it('finds the line that Katayama 1997 printed for thrips', () => {
    const { law } = fitLaw(tableOf('frankliniella-occidentalis-katayama'), lawOf('linear, no upper limit'))!;
    if (law.kind !== 'linear') throw new Error('another law');
    expect(law.lowerC.toFixed(1)).toBe('9.5');
    expect(Math.abs(law.degreeDays / 194 - 1)).toBeLessThan(0.01);
  });

  it('gives no corrected AIC where the points are too few', () => {
    expect(correctedAic(6, 5, 1e-4)).toBeUndefined();
    // By hand: 6 ln(1e-4 / 6) + 8 + 2 x 4 x 5 / 1.
    expect(correctedAic(6, 4, 1e-4)).toBeCloseTo(6 * Math.log(1e-4 / 6) + 48, 10);
  });
});

describe('the population of the peach-potato aphid, by a law fitted to another paper', () => {
  const { development } = speciesById('myzus-persicae');
  const daysToAdult = (temperatureC: number) => 1 / clockRate(development)(temperatureC);

  // An unnamed study in a collection of aphid temperatures (birth to adult, host not stated), 30 °C among them.
  it.each([
    [10, 23],
    [15, 12.3],
    [20, 8.4],
    [25, 6.7],
    [30, 8.1],
  ])('adult at %d °C after %d days within 15 %%', (temperatureC, days) => {
    expect(Math.abs(daysToAdult(temperatureC) / days - 1)).toBeLessThan(0.15);
  });

  // Kim et al. 2012, Korean J Appl Entomol 51:431: 14.4 days at 14.6 °C and 6.0 at 26.7 °C in a plastic house.
  it.each([
    [14.6, 14.4],
    [26.7, 6],
  ])('adult in a plastic house of %d °C after %d days within 20 %%', (temperatureC, days) => {
    expect(Math.abs(daysToAdult(temperatureC) / days - 1)).toBeLessThan(0.2);
  });

  // Satar et al. 2008, J Plant Dis Prot 115:69: none live through constant 32.5 °C.
  it('comes to a stand near 32.5 °C', () => {
    expect(daysToAdult(32)).toBeGreaterThan(10);
    expect(clockRate(development)(33)).toBe(0);
  });
});

describe('docs/rate-laws.md', () => {
  let fresh: string;
  beforeAll(() => {
    fresh = rateLawsText();
  });

  // Figures within 1 %, so that another processor's rounding is no difference.
  it('holds the fits of today: npm run fits writes it', () => {
    const figures = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g;
    const page = readFileSync(rateLawsPage, 'utf8');
    expect(page.replace(figures, '#')).toBe(fresh.replace(figures, '#'));
    const fitted = fresh.match(figures)!.map(Number);
    page.match(figures)!.forEach((figure, i) => {
      expect(Math.abs(Number(figure) - fitted[i]!)).toBeLessThanOrEqual(0.01 * Math.abs(fitted[i]!));
    });
  });

  it('laws in use in the records are the fits of their tables, over the life that the table times', () => {
    const used = allRecords.filter((r) => r.development.fitted);
    expect(used.map(({ id }) => id)).toContain('myzus-persicae');
    for (const { id, development, traits } of used) {
      const { table, law, spanDegreeDays } = development.fitted!;
      const { species, stage, days } = tableOf(table);
      expect(species).toBe(id);
      const kind = fittableLaws.find((fittable) => fittable.law([]).kind === law.kind)!;
      const fit = fitLaw(tableOf(table), kind)!;
      for (const [t] of days) expect(Math.abs(rateBy(law, t) / rateBy(fit.law, t) - 1)).toBeLessThan(0.001);
      const toAdult = development.stages.reduce((sum, { degreeDays }) => sum + degreeDays, 0);
      const after = stage === 'birth to first birth' ? traits.adult.preovipositionDegreeDays : 0;
      expect(spanDegreeDays).toBeCloseTo(toAdult + after, 6);
    }
  });

  it('its tables agree with the rows of the records', () => {
    for (const table of developmentTables) {
      const record = allRecords.find(({ id }) => id === table.species);
      if (!record) continue;
      const study = table.source.slice(0, 12);
      const rows = record.rows.filter(({ what, source }) => /^days, /.test(what) && source.startsWith(study));
      for (const [temperatureC, days] of table.days) {
        const printed = rows.filter(({ conditions }) => conditions.startsWith(`${temperatureC} °C`));
        expect(
          printed.map(({ value }) => value),
          `${table.id} at ${temperatureC} °C`,
        ).toContain(days);
      }
    }
  });
});
