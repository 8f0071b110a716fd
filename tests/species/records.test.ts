/** The species records: complete, in order, and every value in use found among the published rows. */
import { describe, expect, it } from 'vitest';
import { clockRate } from '../../services/model/population/clock.ts';
import { factorAt } from '../../services/model/population/dayTables.ts';
import { enemyIds, pestIds, visitorIds } from '../../services/model/season.ts';
import {
  allRecords,
  enemyRecords,
  enemyTraits,
  pestRecords,
  pestTraits,
  speciesById,
  visitorRecords,
} from '../../services/model/species/catalogue.ts';
import type { PublishedRow, SpeciesRecord, TemperatureFactor } from '../../services/model/species/record.ts';

const records = allRecords;
const totalOf = ({ development }: SpeciesRecord) =>
  development.stages.reduce((sum, s) => sum + s.degreeDays, 0);

/** A row holds the value, within the rounding, or prints a range around it. */
function isTraced(record: SpeciesRecord, value: number, what: RegExp, rounding: number): boolean {
  return record.rows.some((row) => what.test(row.what) && holds(row, value, rounding));
}

function holds({ value, low, high }: PublishedRow, wanted: number, rounding: number): boolean {
  if (low !== undefined && high !== undefined) return low <= wanted && wanted <= high;
  return Math.abs(value - wanted) <= rounding;
}

function factorsOf({ traits }: SpeciesRecord): TemperatureFactor[] {
  const own = traits.kind === 'pest' ? traits.flightByTemperature : traits.activityByTemperature;
  return [traits.adult.fecundityByTemperature, own];
}

const wingless = new Set<string>(['tetranychus-urticae', 'planococcus-citri']);

it('no two records share an id or a common name, and a reason to stay out of the advice is a sentence', () => {
  expect(new Set(records.map(({ id }) => id)).size).toBe(records.length);
  expect(new Set(records.map(({ commonName }) => commonName)).size).toBe(records.length);
  for (const { notAdvised } of allRecords)
    if (notAdvised !== undefined) expect(notAdvised).toMatch(/^[a-z].{30,}\.$/);
});

it('every pest and natural enemy has its record, under its own id', () => {
  expect(pestRecords.map((record) => record.id)).toEqual([...pestIds]);
  expect(enemyRecords.map((record) => record.id)).toEqual([...enemyIds]);
  expect(visitorRecords.map((record) => record.id)).toEqual([...visitorIds]);
  for (const id of [...pestIds, ...enemyIds, ...visitorIds]) expect(speciesById(id).id).toBe(id);
});

it('asking for the traits of the wrong kind is an error that names the species', () => {
  expect(() => pestTraits(speciesById('encarsia-formosa'))).toThrow(/encarsia-formosa is a natural enemy/);
  expect(() => enemyTraits(speciesById('myzus-persicae'))).toThrow(/myzus-persicae is a pest/);
  expect(pestTraits(speciesById('myzus-persicae')).kind).toBe('pest');
  expect(enemyTraits(speciesById('encarsia-formosa')).kind).toBe('enemy');
});

describe.each(records)('$id', (record) => {
  const { development, traits, rows } = record;

  it('has positive degree-days, spreads below one half and survivals up to one', () => {
    for (const stage of development.stages) {
      expect(stage.degreeDays).toBeGreaterThan(0);
      expect(stage.cv).toBeGreaterThan(0);
      expect(stage.cv).toBeLessThan(0.5);
      expect(stage.survival).toBeGreaterThan(0);
      expect(stage.survival).toBeLessThanOrEqual(1);
    }
    expect(new Set(development.stages.map((stage) => stage.name)).size).toBe(development.stages.length);
  });

  it('has its thresholds in order and its factors by rising temperature', () => {
    expect(development.lowerC).toBeLessThan(development.plateauC);
    expect(development.plateauC).toBeLessThan(development.zeroC);
    for (const factor of factorsOf(record)) {
      const temperatures = factor.map(([temperatureC]) => temperatureC);
      expect(temperatures).toEqual([...new Set(temperatures)].sort((a, b) => a - b));
      for (const [, value] of factor) expect(value).toBeGreaterThanOrEqual(0);
    }
  });

  it('its factors reach 1, but for the flight of a pest without wings, which is 0 throughout', () => {
    const [laying, own] = factorsOf(record).map((factor) => Math.max(...factor.map(([, value]) => value)));
    expect(laying).toBe(1);
    expect(wingless.has(record.id) ? own : 1 - own!).toBe(0);
  });

  it('every row says what, under which conditions, from which source and how it was read', () => {
    expect(rows.length).toBeGreaterThan(15);
    for (const row of rows) {
      expect(Number.isFinite(row.value)).toBe(true);
      for (const text of [row.what, row.unit, row.conditions, row.source]) expect(text.trim()).not.toBe('');
      expect(['SEEN', 'MEM', 'DER']).toContain(row.mark);
      if (row.low !== undefined) expect(row.low).toBeLessThan(row.high!);
    }
  });

  it('its development in use is found among the rows', () => {
    expect(isTraced(record, development.lowerC, /^lower threshold/, 0.05)).toBe(true);
    expect(isTraced(record, totalOf(record), /^degree-days, (egg|birth) to adult/, 0.5)).toBe(true);
    const upper = /plateau|zero|limit|fastest|best|linear|live|die|no adults|no development|end of|survives/;
    expect(isTraced(record, development.plateauC, upper, 0.75)).toBe(true);
    expect(isTraced(record, development.zeroC, upper, 0.05)).toBe(true);
  });

  it('its adult life and eggs a day in use are found among the rows', () => {
    expect(isTraced(record, traits.adult.lifeDaysAt20C, /^adult life/, 0.01)).toBe(true);
    expect(isTraced(record, traits.adult.eggsPerDay, /^(eggs|young) a day/, 0.01)).toBe(true);
  });

  it('its wait for the first egg in use is found among the rows, as days or as degree-days', () => {
    const { preovipositionDegreeDays } = traits.adult;
    const days = rows.filter(({ what }) => /^days before the first|^days, moult to first/.test(what));
    const asDays = days.some(({ value, conditions }) => {
      const temperatureC = /^([\d.]+) °C/.exec(conditions)?.[1];
      const wait = value * (Number(temperatureC ?? 20) - development.lowerC);
      return Math.abs(preovipositionDegreeDays / wait - 1) < 0.05;
    });
    const direct = /^degree-days, (adult|moult) to first|^degree-days, egg to first egg/;
    expect(
      asDays || rows.some(({ what, value }) => direct.test(what) && value >= preovipositionDegreeDays),
    ).toBe(true);
  });

  it('its crowding in use is found among the rows', () => {
    if (traits.kind === 'pest') {
      expect(isTraced(record, traits.crowdingPerM2, /^adults a m2 of ground/, 0)).toBe(true);
    }
  });
});

const enemies = records.flatMap((record) =>
  record.traits.kind === 'enemy' ? [{ id: record.id, record, traits: record.traits }] : [],
);

describe.each(enemies)('$id as an enemy', ({ record, traits }) => {
  it('its prey a day, temperatures and release rate in use are found among the rows', () => {
    for (const attack of traits.attacks) {
      expect(isTraced(record, attack.ceilingPerDay, /a day/, 0.35)).toBe(true);
    }
    for (const temperatureC of [traits.livesAboveC, traits.huntsAboveC]) {
      expect(record.rows.some((row) => row.unit === '°C' && holds(row, temperatureC, 0.05))).toBe(true);
    }
    const { release } = traits;
    expect(record.rows.some((row) => row.unit === 'per m2' && holds(row, release?.perM2 ?? 0, 0))).toBe(
      release !== undefined,
    );
  });

  it('hunts only where it lives, and attacks stages its prey has', () => {
    expect(traits.huntsAboveC).toBeGreaterThanOrEqual(traits.livesAboveC);
    for (const { prey, stages } of traits.attacks)
      expect(stagesOf(prey)).toEqual(expect.arrayContaining([...stages]));
  });

  it('its pollen, rest, interference and loss to ants in use are found among the rows', () => {
    const { livesOnPollen, rests, interferencePerM2, antsTake } = traits;
    const kept = (value: number | undefined, what: RegExp) =>
      value === undefined || isTraced(record, value, what, 0.005);
    expect(kept(livesOnPollen, /^share of laying without prey/)).toBe(true);
    expect(kept(rests?.belowDayLengthH, /^rests in days shorter than/)).toBe(true);
    expect(kept(rests?.belowC, /^warmest at which it rests/)).toBe(true);
    expect(kept(interferencePerM2, /^search halves among/)).toBe(true);
    expect(kept(antsTake, /^search lost to ants/)).toBe(true);
  });
});

/** Stages that can be attacked: of a wasp those in its host. */
function stagesOf(id: SpeciesRecord['id']): string[] {
  const { development, traits } = speciesById(id);
  const wasp = traits.kind === 'enemy' && traits.attacks.some(({ kind }) => kind === 'parasitism');
  return [...(wasp ? ['hidden', 'visible'] : development.stages.map(({ name }) => name)), 'adult'];
}

// Laying in use, falling in a line over a mean life (0.583 of the first days), against eggs or young in a life as
// printed in the paper of the record: the arithmetic of `eggsPerDay` and no test of the biology.
it.each([
  ['amblyseius-swirskii', 25, 31.91, 'Qassim study'],
  ['amblyseius-swirskii', 30, 37.1, 'Qassim study'],
  ['neoseiulus-californicus', 25, 41.6, 'Gotoh et al. 2004'],
  ['aphidoletes-aphidimyza', 25, 104.3, 'Madahi et al. 2013'],
  ['cryptolaemus-montrouzieri', 26, 659, 'Qin et al. 2014'],
  ['coccinella-septempunctata', 25, 287.4, 'Xia et al. 1999'],
  ['episyrphus-balteatus', 20, 500, 'INRAE'],
  ['macrolophus-pygmaeus', 25, (146.85 + 162.2) / 2, 'Perdikis & Lykouressis 2002, mean of two prey'],
  ['trialeurodes-vaporariorum', 20, 160, 'van Roermund & van Lenteren 1992, from memory'],
  ['bemisia-tabaci', 24, 92.58, 'Takalloozadeh'],
  ['macrosiphum-euphorbiae', 22, 58.75, 'De Conti et al. 2010'],
  ['macrosiphum-rosae', 22, 28.88, 'Mehrparvar & Hatami 2007'],
  ['myzus-cerasi', 25, 9.36, 'Kok & Kasap 2024'],
  ['aphis-gossypii', 20, 35.98 / 0.87, 'Zamani et al. 2006, R0 by survival'],
  ['tetranychus-urticae', 30, 89.1, 'Praslicka & Huszar 2004'],
] as const)('%s lays in a life at %d °C what was printed: %d (%s)', (id, temperatureC, printed, _paper) => {
  const { development, traits } = speciesById(id);
  const { eggsPerDay, fecundityByTemperature, lifeDaysAt20C } = traits.adult;
  const rate = clockRate(development);
  const lifeDays = (lifeDaysAt20C * rate(20)) / rate(temperatureC);
  const eggs = eggsPerDay * factorAt(fecundityByTemperature, temperatureC) * 0.5833 * lifeDays;
  expect(Math.abs(eggs / printed - 1)).toBeLessThan(0.08);
});

// Worked out by hand from the lines in use, degree-days / (T - threshold), to the precision of the table; not
// published values. They catch a slip of the pen in a threshold or in a split into stages.
it.each([
  ['amblyseius-swirskii', [35, 15, 9.5, 7]],
  ['phytoseiulus-persimilis', [19, 8.6, 5.5, 4.1]],
  ['neoseiulus-cucumeris', [26, 12, 8.1, 6.1]],
  ['encarsia-formosa', [86, 26, 15.5, 11]],
  ['aphidius-colemani', [19, 13.5, 10.5, 8.6]],
  ['adalia-bipunctata', [46, 24, 16.5, 12.5]],
  ['chrysoperla-carnea', [70, 34, 23, 17]],
] as const)('%s takes the days of its line at 15, 20, 25 and 30 °C', (id, days) => {
  const record = speciesById(id);
  days.forEach((expected, i) => {
    const computed = totalOf(record) / (15 + 5 * i - record.development.lowerC);
    expect(Math.abs(computed / expected - 1)).toBeLessThan(0.04);
  });
});
