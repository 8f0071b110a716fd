/** Rows that differ in temperature and value only. */
import { fromLifeTable, ledgerDays, type Measure, populationDays, type Until } from './measures.ts';
import type { AnySpeciesId, NumberRow } from './row.ts';

type Series = Pick<NumberRow, 'id' | 'source' | 'mark'> & { species: AnySpeciesId } & Partial<
    Pick<NumberRow, 'tolerance' | 'note'>
  > & { conditions?: string | undefined; share?: number };

/** A value at a temperature, and the reason when ours is known to miss it. */
export type At = readonly [temperatureC: number, published: number, reason?: string];

const untilWords = {
  adult: 'days to adult',
  'first egg': 'days to first egg or young',
  'egg hatch': 'days of the egg',
};

const wordsOf = (until: Until) =>
  typeof until === 'string'
    ? untilWords[until]
    : `days of ${until.map((stage) => (stage === 'waiting' ? 'adults before the first egg' : stage)).join(', ')}`;

type LifeSeries = Series & { crop?: string };

const ofLifeTable =
  (measure: Measure, what: string, unit: string) => (series: LifeSeries, at: readonly At[]) =>
    at.map((value) =>
      row({ conditions: series.crop, ...series }, what, unit, value, () =>
        fromLifeTable(series.species, measure, value[0], series.crop),
      ),
    );

/** Rate of increase by temperature; `crop` brings in the plant's factor on eggs. */
export const growthRows = ofLifeTable('growthPerDay', 'r', 'a day');
export const offspringRows = ofLifeTable('perGeneration', 'R0', 'offspring');
export const generationRows = ofLifeTable('generationDays', 'generation', 'd');

type DaysSeries = Series & { until?: Until; law?: 'ledger' | 'population' };

/** Days of development by temperature, by the degree-day ledger or as in the forecast's population. */
export function daysRows(series: DaysSeries, at: readonly At[]) {
  const { species, until = 'adult', law = 'ledger' } = series;
  return at.map((value) =>
    row(series, `${wordsOf(until)} (${law})`, 'd', value, () =>
      law === 'ledger'
        ? ledgerDays(species, [[0, value[0]]], until)
        : populationDays(species, value[0], until),
    ),
  );
}

/** Days by a printed line at some temperatures, each with the reason when ours is known to miss it. */
export function lineRows(
  series: DaysSeries,
  [lowerC, degreeDays]: readonly [lowerC: number, degreeDays: number],
  at: readonly (number | readonly [temperatureC: number, reason: string])[],
) {
  const where = series.conditions ? `${series.conditions}, ` : '';
  return daysRows(
    { ...series, conditions: `${where}line ${degreeDays} above ${lowerC} °C` },
    at.map((each) => {
      const [temperatureC, reason] = typeof each === 'number' ? [each] : each;
      const days = degreeDays / (temperatureC - lowerC);
      return reason === undefined ? [temperatureC, days] : [temperatureC, days, reason];
    }),
  );
}

function row(
  { id, species, source, mark, share, tolerance = share ? { share } : undefined, note, conditions }: Series,
  what: string,
  unit: string,
  [temperatureC, published, reason]: At,
  ours: NumberRow['ours'],
): NumberRow {
  return {
    kind: 'number',
    id,
    species,
    what: `${what} at ${temperatureC} °C${conditions ? `, ${conditions}` : ''}`,
    published,
    unit,
    source,
    mark,
    ours,
    ...(tolerance && { tolerance }),
    ...(note && { note }),
    ...(reason && { reason }),
  };
}
