/**
 * Days of development of the natural enemies that wait for their place in the forecast, as published at
 * constant temperature, against the laws in use. Where the days come from the paper of the line itself the
 * test says so; the others are independent. A published value that the law misses is asserted as missed, so
 * that a change shows: docs/accuracy.md lists it.
 */
import { describe, expect, it } from 'vitest';
import { degreeDayRate } from '../../services/model/climate/developmentRate.ts';
import type { SpeciesId } from '../../services/model/season.ts';
import { allRecords } from '../../services/model/species/catalogue.ts';
import type { EnemyTraits } from '../../services/model/species/record.ts';

function enemy(id: SpeciesId) {
  const record = allRecords.find((known) => known.id === id);
  if (record?.traits.kind !== 'enemy') throw new Error(`${id} is not among the enemies of the catalogue`);
  return { ...record, traits: record.traits satisfies EnemyTraits };
}

const total = (id: SpeciesId) =>
  enemy(id).development.stages.reduce((sum, stage) => sum + stage.degreeDays, 0);
const toFirstEgg = (id: SpeciesId) => total(id) + enemy(id).traits.adult.preovipositionDegreeDays;
const stage = (id: SpeciesId, name: string) =>
  enemy(id).development.stages.find((each) => each.name === name)!.degreeDays;

/** Days at a constant temperature by the law of the population. */
const daysAt = (id: SpeciesId, temperatureC: number, degreeDays = total(id)) =>
  degreeDays / degreeDayRate(enemy(id).development, temperatureC);

/** Longer (above 0) or shorter than published, as a share. */
const off = (days: number, published: number) => days / published - 1;
const share = (days: number, published: number) => Math.abs(off(days, published));

/** Days by a printed line. */
const line = (lowerC: number, degreeDays: number, temperatureC: number) =>
  degreeDays / (temperatureC - lowerC);

// Worked out by hand from the lines in use, degree-days / (T - threshold), to the precision of the table; not
// published values. They catch a slip of the pen in a threshold, in a split into stages or in a plateau.
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
  days.forEach((expected, i) => {
    if (expected !== undefined) expect(share(daysAt(id, 15 + 5 * i), expected)).toBeLessThan(0.04);
  });
});

describe('californicus mites', () => {
  const id = 'neoseiulus-californicus';

  // Gotoh et al. 2004, Exp Appl Acarol 32:15, the paper of the line: egg to first egg 86.2 above 10.3 °C.
  it.each([15, 20, 25, 30])('first egg at %d °C as the line of Gotoh 2004 within 1 %% (same paper)', (t) => {
    expect(share(daysAt(id, t, toFirstEgg(id)), line(10.3, 86.2, t))).toBeLessThan(0.01);
  });

  // Aydin population, Turk J Agric For 33, carmine mite: 83.3 above 7.8 °C. Independent.
  it.each([20, 25, 30])('adult at %d °C within 15 %% of the Aydin line', (temperatureC) => {
    expect(share(daysAt(id, temperatureC), line(7.8, 83.3, temperatureC))).toBeLessThan(0.15);
  });

  // Egyptian study, soybean, young stages of the female. Independent.
  it.each([
    [20, 7.35],
    [30, 4.22],
  ])('adult at %d °C within 15 %% of %d days (Egypt)', (temperatureC, days) => {
    expect(share(daysAt(id, temperatureC), days)).toBeLessThan(0.15);
  });

  // Hart et al. 2002, J Insect Physiol 48:593: 142.9 above 8.6 °C "per generation". Independent, missed.
  it.each([20, 25, 30])('missed: first egg at %d °C comes 25 to 40 %% sooner than the UK line', (t) => {
    const miss = off(daysAt(id, t, toFirstEgg(id)), line(8.6, 142.9, t));
    expect(miss).toBeLessThan(-0.25);
    expect(miss).toBeGreaterThan(-0.4);
  });
});

describe('yellow whitefly wasp', () => {
  const id = 'eretmocerus-eremicus';

  // Tullett et al. 2004, Physiol Entomol 29:363: 366.8 above 6.1 °C. Independent.
  it.each([20, 25, 30])('%d °C within 15 %% of the UK line', (temperatureC) => {
    expect(share(daysAt(id, temperatureC), line(6.1, 366.8, temperatureC))).toBeLessThan(0.15);
  });

  // Qiu et al. 2004, Eur J Entomol 101:83, Bemisia: 14 days at 32 °C, 79.3 at 15 °C. Independent.
  it('14 days at 32 °C within 15 %', () => {
    expect(share(daysAt(id, 32), 14)).toBeLessThan(0.15);
  });

  it('missed: at 15 °C little more than half of the 79.3 days measured', () => {
    const miss = off(daysAt(id, 15), 79.3);
    expect(miss).toBeLessThan(-0.4);
    expect(miss).toBeGreaterThan(-0.5);
  });
});

describe('large aphid wasp', () => {
  const id = 'aphidius-ervi';

  // Campbell et al. 1974, J Appl Ecol 11:431: 230 above 4.2 °C. Other paper, one author and region in common.
  it.each([15, 20, 25])('%d °C within 10 %% of the line of Campbell 1974', (temperatureC) => {
    expect(share(daysAt(id, temperatureC), line(4.2, 230, temperatureC))).toBeLessThan(0.1);
  });

  // Malina et al. 2010, Biologia 65:899, green apple aphid: 229.73 above 5.98 °C. Independent.
  it.each([15, 20, 25])('%d °C within 15 %% of the line on a poor host', (temperatureC) => {
    expect(share(daysAt(id, temperatureC), line(5.98, 229.73, temperatureC))).toBeLessThan(0.15);
  });

  // Hofsvang & Hågvar 1975, Entomophaga 20:11: 333.7 above 3.2 °C. Independent, missed.
  it.each([20, 25])('missed: %d °C is 25 to 35 %% shorter than the Norwegian line', (temperatureC) => {
    const miss = off(daysAt(id, temperatureC), line(3.2, 333.7, temperatureC));
    expect(miss).toBeLessThan(-0.25);
    expect(miss).toBeGreaterThan(-0.35);
  });
});

describe('black-mummy wasp', () => {
  // Herbea, aphid parasitoid sheet: 21 days at 21 °C, 16 at 24 °C. Independent.
  it.each([
    [21, 21],
    [24, 16],
  ])('check 5: %d °C takes %d days within 1.5', (temperatureC, days) => {
    expect(Math.abs(daysAt('aphelinus-abdominalis', temperatureC) - days)).toBeLessThan(1.5);
  });
});

describe('aphid midge', () => {
  const id = 'aphidoletes-aphidimyza';

  // Havelka & Zemek 1988, J Appl Entomol 105:280, strains of Ceske Budejovice, Prague, Chelcice and Moldova.
  const strains = [
    [10.2, 240.5],
    [10.9, 193.8],
    [11.2, 218],
    [12, 196.4],
  ] as const;

  it.each(strains)('20 and 25 °C within 20 %% of the strain above %d °C', (lowerC, degreeDays) => {
    for (const t of [20, 25]) expect(share(daysAt(id, t), line(lowerC, degreeDays, t))).toBeLessThan(0.2);
  });

  it.each(strains)('missed: 15 °C is 30 to 55 %% shorter than in the strain above %d °C', (lowerC, dd) => {
    const miss = off(daysAt(id, 15), line(lowerC, dd, 15));
    expect(miss).toBeLessThan(-0.3);
    expect(miss).toBeGreaterThan(-0.55);
  });

  // Madahi et al. 2013, J Crop Prot 2:355, melon aphid: generation time 22.42 to 24.47 days at 25 °C. Ours is
  // the first egg and half of the life that follows it. Independent of the line.
  it('check 12: generation at 25 °C within 20 % of the middle of the printed range', () => {
    const { lifeDaysAt20C } = enemy(id).traits.adult;
    const layingDays = daysAt(id, 25, lifeDaysAt20C * degreeDayRate(enemy(id).development, 20));
    const generation = daysAt(id, 25, toFirstEgg(id)) + layingDays / 2;
    expect(share(generation, (22.42 + 24.47) / 2)).toBeLessThan(0.2);
  });

  // Yamane et al. 2012, Appl Entomol Zool 47:17: all at rest at 12.7 h (Japan); IRIIS: 16 h are enough (Quebec).
  it('check 18: rests in days of 12.7 hours, is awake in days of 16', () => {
    const { rests } = enemy(id).traits;
    expect(rests?.belowDayLengthH).toBeGreaterThan(12.7);
    expect(rests?.belowDayLengthH).toBeLessThanOrEqual(16);
  });
});

describe('whitefly and thrips bugs', () => {
  // French trade press on predatory mirids: 45 days at 20 °C, 30 at 25 °C. Independent.
  it.each([
    [20, 45],
    [25, 30],
  ])('check 7: Macrolophus at %d °C within 20 %% of %d days', (temperatureC, days) => {
    expect(share(daysAt('macrolophus-pygmaeus', temperatureC), days)).toBeLessThan(0.2);
  });

  // Hart et al. 2002, Physiol Entomol 27:112: 472 above 8.4 °C. Independent.
  it.each([15, 20, 25, 30])('Macrolophus at %d °C within 10 %% of the UK line', (temperatureC) => {
    expect(share(daysAt('macrolophus-pygmaeus', temperatureC), line(8.4, 472, temperatureC))).toBeLessThan(
      0.1,
    );
  });

  // Perdikis & Lykouressis 2002, Environ Entomol 31:661, the paper of the line: egg to first egg 533 above 8.51.
  it.each([15, 20, 25])('Macrolophus lays at %d °C as the line egg to egg within 5 %% (same paper)', (t) => {
    const days = daysAt('macrolophus-pygmaeus', t, toFirstEgg('macrolophus-pygmaeus'));
    expect(share(days, line(8.51, 533, t))).toBeLessThan(0.05);
  });

  // Sanchez & Lacasa 2002, Bull Entomol Res 92:77, the days the constant rests on.
  it.each([
    [20, 34.6],
    [35, 12.3],
  ])('Orius at %d °C within 3 %% of %d days (same data)', (temperatureC, days) => {
    expect(share(daysAt('orius-laevigatus', temperatureC), days)).toBeLessThan(0.03);
  });
});

describe('ladybirds', () => {
  // Legaspi et al. 2008, J Insect Sci 8:7, the paper of the line.
  it.each([
    [22, 24],
    [30, 15],
  ])('Delphastus at %d °C within 5 %% of %d days (same paper)', (temperatureC, days) => {
    expect(share(daysAt('delphastus-catalinae', temperatureC), days)).toBeLessThan(0.05);
  });

  // Simmons & Legaspi 2007, J Entomol Sci 42:163: at 15 °C no larva becomes a pupa. The line goes on.
  it('missed: the line of Delphastus runs at 15 °C; the release condition stops above it', () => {
    expect(daysAt('delphastus-catalinae', 15)).toBeLessThan(70);
    expect(enemy('delphastus-catalinae').traits.huntsAboveC).toBeGreaterThan(15);
  });

  // Hebrew University of Jerusalem, Plant Pests of the Middle East: about 28 days at 27 °C. Independent.
  it('check 8: Cryptolaemus at 27 °C within 4 days of 28', () => {
    expect(Math.abs(daysAt('cryptolaemus-montrouzieri', 27) - 28)).toBeLessThan(4);
  });

  const seven = 'coccinella-septempunctata';

  // Hodek 1958, 199.7 above 12.4 °C; Xia et al. 1999, Environ Entomol 28:307, abstract, 209.3 above 12.6 °C;
  // Butler 1982, Entomophaga 27:349, 191 above 13.7 °C. Independent.
  it.each([
    ['Hodek 1958', 12.4, 199.7, [20, 25, 30]],
    ['Xia 1999', 12.6, 209.3, [20, 25, 30]],
    ['Butler 1982', 13.7, 191, [25, 30]],
  ] as const)('seven-spot within 15 %% of the line of %s', (_, lowerC, degreeDays, temperatures) => {
    for (const t of temperatures)
      expect(share(daysAt(seven, t), line(lowerC, degreeDays, t))).toBeLessThan(0.15);
  });

  it('missed: seven-spot at 20 °C is 15 to 20 % shorter than the line of Butler 1982', () => {
    const miss = off(daysAt(seven, 20), line(13.7, 191, 20));
    expect(miss).toBeLessThan(-0.15);
    expect(miss).toBeGreaterThan(-0.2);
  });

  // Xia et al. 1999: 10.8 days at 35 °C, tolerance 10 %. The bend in use was set by this value: a condition kept.
  it('check 9: seven-spot takes the 10.8 days at 35 °C by which its bend was set', () => {
    expect(share(daysAt(seven, 35), 10.8)).toBeLessThan(0.1);
  });
});

describe('hoverfly and flower bug', () => {
  // Ankersmit et al. 1986, Entomol Exp Appl 42:271: 334.2 above 4.9 °C. Independent.
  it.each([15, 20, 25])('hoverfly at %d °C within 15 %% of the Dutch line', (temperatureC) => {
    expect(share(daysAt('episyrphus-balteatus', temperatureC), line(4.9, 334.2, temperatureC))).toBeLessThan(
      0.15,
    );
  });

  it('missed: hoverfly at 30 °C is 15 to 20 % shorter than the Dutch line', () => {
    const miss = off(daysAt('episyrphus-balteatus', 30), line(4.9, 334.2, 30));
    expect(miss).toBeLessThan(-0.15);
    expect(miss).toBeGreaterThan(-0.2);
  });

  // Bufour & Harizanova, Plovdiv, females on pear psyllid; the constant rests on them among others.
  it.each([
    [24, 22],
    [28, 15],
  ])('flower bug at %d °C within 15 %% of %d days (same data)', (temperatureC, days) => {
    expect(share(daysAt('anthocoris-nemoralis', temperatureC), days)).toBeLessThan(0.15);
  });

  // Yanik 2011, Selcuk J Agr Food Sci 25(4):21, nymphs on moth eggs, 60 % humidity.
  it.each([
    [20, 16.47],
    [25, 13],
  ])('missed: nymph of the flower bug at %d °C takes 15 to 45 %% longer than %d days', (t, days) => {
    const miss = off(daysAt('anthocoris-nemoralis', t, stage('anthocoris-nemoralis', 'nymph')), days);
    expect(miss).toBeGreaterThan(0.15);
    expect(miss).toBeLessThan(0.45);
  });
});
