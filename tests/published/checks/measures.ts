/** What the tool says of a species at constant temperature: days, growth, generation. */
import { whenReached } from '../../../services/model/climate/degreeDays.ts';
import { clockRate } from '../../../services/model/population/clock.ts';
import { lifeTable } from '../../../services/model/population/lifeTable.ts';
import { totalDegreeDays } from '../../../services/model/population/stages.ts';
import { allRecords } from '../../../services/model/species/catalogue.ts';
import type { SpeciesRecord } from '../../../services/model/species/record.ts';
import { day, throughPoints } from '../../climate/curves.ts';
import { type Answer, type AnySpeciesId, noRecord } from './row.ts';

type AnyRecord = SpeciesRecord;

const records: readonly AnyRecord[] = allRecords;

/** The answer of a species record, or that there is none yet. */
export function ofRecord(id: AnySpeciesId, answer: (record: AnyRecord) => Answer): Answer {
  const record = records.find((candidate) => candidate.id === id);
  return record ? answer(record) : noRecord;
}

/** To an event from egg or birth on, or through stages of the record; `waiting` are adults before the first egg. */
export type Until = 'adult' | 'first egg' | 'egg hatch' | readonly string[];

function degreeDaysUntil({ development, traits }: AnyRecord, until: Until): number {
  if (until === 'egg hatch') return development.stages[0]!.degreeDays;
  if (typeof until !== 'string') {
    const waiting = { name: 'waiting', degreeDays: traits.adult.preovipositionDegreeDays };
    const through = [...development.stages, waiting].filter(({ name }) => until.includes(name));
    return through.reduce((sum, { degreeDays }) => sum + degreeDays, 0);
  }
  const total = totalDegreeDays(development);
  return until === 'adult' ? total : total + traits.adult.preovipositionDegreeDays;
}

export type Cycle = readonly (readonly [hour: number, temperatureC: number])[];

/** Days by the degree-day ledger on a day that repeats `cycle`. */
export function ledgerDays(id: AnySpeciesId, cycle: Cycle, until: Until): Answer {
  return ofRecord(id, (record) => {
    const { lowerC, plateauC } = record.development;
    const points = Array.from({ length: 400 }, (_, d) => cycle.map(([h, t]) => [d * 24 + h, t] as const));
    const needed = degreeDaysUntil(record, until);
    const reached = whenReached(throughPoints(points.flat()), { lowerC, upperC: plateauC }, 0, needed);
    return reached === undefined ? 'never' : reached / day;
  });
}

/** Mean days in the forecast's population, by the law of its clock. */
export function populationDays(id: AnySpeciesId, temperatureC: number, until: Until): Answer {
  return ofRecord(id, (record) => {
    const perDay = clockRate(record.development)(temperatureC);
    const clock = degreeDaysUntil(record, until) / totalDegreeDays(record.development);
    return perDay === 0 ? 'never' : clock / perDay;
  });
}

/** Degree-days from birth to the first young. */
export const degreeDaysToFirstEgg = (id: AnySpeciesId): Answer =>
  ofRecord(id, (record) => degreeDaysUntil(record, 'first egg'));

export type Measure = 'growthPerDay' | 'perGeneration' | 'generationDays';

/** r, R0 or T from the life table; `crop` brings in the plant's factor on eggs. */
export function fromLifeTable(
  id: AnySpeciesId,
  measure: Measure,
  temperatureC: number,
  crop?: string,
): Answer {
  return ofRecord(id, (record) => {
    const { traits } = record;
    const hostFactor = (crop && traits.kind === 'pest' && traits.hostFactor[crop]) || 1;
    return lifeTable({ record, temperatureC, hostFactor })[measure] ?? 'nobody is born';
  });
}

/** Whether a newborn leaves fewer than one. */
export function dwindles(id: AnySpeciesId, temperatureC: number): Answer {
  return ofRecord(id, (record) => lifeTable({ record, temperatureC }).perGeneration < 1);
}

/** A truth about several numbers, or the first that is none, in words. */
export function whether(numbers: readonly Answer[], test: (values: readonly number[]) => boolean): Answer {
  const words = numbers.find((number) => typeof number !== 'number');
  return words ?? test(numbers as number[]);
}
