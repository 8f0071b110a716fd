/** Short hand for the tables of published values in the species records. */
import type { Mark, PublishedRow } from './record.ts';

type Line = readonly [what: string, value: number, unit: string, conditions: string, note?: string];
type Band = readonly [
  what: string,
  low: number,
  high: number,
  unit: string,
  conditions: string,
  note?: string,
];

/** Values read in one source, one line each. */
export function rowsFrom(source: string, mark: Mark, lines: readonly Line[]): PublishedRow[] {
  return lines.map(([what, value, unit, conditions, note]) =>
    withNote({ what, value, unit, conditions, source, mark }, note),
  );
}

/** Values printed as a range; `value` is its middle, low and high are what the source prints. */
export function bandsFrom(source: string, mark: Mark, bands: readonly Band[]): PublishedRow[] {
  return bands.map(([what, low, high, unit, conditions, note]) =>
    withNote({ what, value: (low + high) / 2, low, high, unit, conditions, source, mark }, note),
  );
}

/** One quantity at several constant temperatures: values by temperature (degC). */
export function byTemperature(
  source: string,
  mark: Mark,
  [what, unit, conditions, note]: readonly [what: string, unit: string, conditions: string, note?: string],
  values: Readonly<Record<number, number>>,
): PublishedRow[] {
  return Object.entries(values)
    .sort(([a], [b]) => Number(a) - Number(b))
    .map(([temperatureC, value]) =>
      withNote({ what, value, unit, conditions: `${temperatureC} °C, ${conditions}`, source, mark }, note),
    );
}

/** A published line of development: its threshold (degC) and its constant (degree-days), never parted. */
export function thermalLine(
  source: string,
  mark: Mark,
  [stage, lowerC, degreeDays, conditions, note]: readonly [
    stage: string,
    lowerC: number,
    degreeDays: number,
    conditions: string,
    note?: string,
  ],
): PublishedRow[] {
  return [
    withNote(
      { what: `lower threshold, ${stage}`, value: lowerC, unit: '°C', conditions, source, mark },
      note,
    ),
    withNote(
      {
        what: `degree-days, ${stage}`,
        value: degreeDays,
        unit: 'degree-days',
        conditions: `above ${lowerC} °C; ${conditions}`,
        source,
        mark,
      },
      note,
    ),
  ];
}

/** Lines of one stage from several studies that one collection holds; `collected` is appended to the study. */
export function collectedLines(
  collected: string,
  stage: string,
  conditions: string,
  lines: readonly (readonly [study: string, lowerC: number, degreeDays: number, note?: string])[],
): PublishedRow[] {
  return lines.flatMap(([study, lowerC, degreeDays, note]) =>
    thermalLine(
      `${study}${collected}`,
      'SEEN',
      note === undefined
        ? [stage, lowerC, degreeDays, conditions]
        : [stage, lowerC, degreeDays, conditions, note],
    ),
  );
}

function withNote(row: PublishedRow, note: string | undefined): PublishedRow {
  return note === undefined ? row : { ...row, note };
}
