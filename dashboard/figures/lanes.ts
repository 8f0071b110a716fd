/** Who is where: generations of pests and their friends as lanes on one time line, with the same as words and a table. */
import type {
  Advice,
  DateRange,
  Forecast,
  LedgerEntry,
  PestForecast,
  PestId,
} from '../../services/model/index.ts';
import { dayAndMonth, expectedWords, instantOf, localDay } from '../words/dates.ts';
import { animals, capital, enemyWords, pestNames, speciesName, stageName } from '../words/names.ts';
import type { FigureTable } from './palette.ts';

/** The clock and the season of the place, as dates are told in. */
export interface Calendar {
  timeZone: string;
  /** The day it ends next. */
  seasonEnd: string;
}

export interface Lane {
  key: string;
  name: string;
  second: string;
  pest: boolean;
  /** Stages by their middle dates; the texture goes from young to old. */
  stages: { name: string; fromMs: number; toMs: number }[];
  /** When the last of them ends, or the wave comes. */
  range?: DateRange;
  /** From the first day to the last on which something can be set out. */
  window?: { fromMs: number; toMs: number };
  words: string;
}

/** 8 of 10 in words. */
export const eightOfTen = (range: DateRange, { timeZone, seasonEnd }: Calendar): string =>
  expectedWords(
    localDay(Date.parse(range.q10), timeZone),
    localDay(Date.parse(range.q90), timeZone),
    seasonEnd,
  );

const isPest = (species: string): boolean => species in pestNames;

function generationLane(entry: LedgerEntry, calendar: Calendar): Lane[] {
  let fromMs = Date.parse(entry.startedAt);
  const stages = entry.stages.flatMap(({ stage, ends }) => {
    if (!ends) return [];
    const one = { name: stageName(entry.species, stage), fromMs, toMs: Date.parse(ends.q50) };
    fromMs = one.toMs;
    return one.toMs > one.fromMs ? [one] : [];
  });
  const last = entry.stages.at(-1);
  if (!last?.ends || last.state === 'done') return [];
  const begun = entry.startedBy === 'release' ? 'those set out' : `generation ${entry.generation}`;
  return [
    {
      key: entry.id,
      name: capital(speciesName(entry.species)),
      second: `${begun}, by degree-days`,
      pest: isPest(entry.species),
      stages,
      range: last.ends,
      words: `grown ${eightOfTen(last.ends, calendar)}`,
    },
  ];
}

/** Counted from today: the ledger counts generations from the first catch. */
const waveName = (index: number): string => (index === 0 ? 'next wave' : `wave ${index + 1}`);

function waveLanes(
  { pests }: Forecast,
  calendar: Calendar,
  isFound: (pest: PestForecast) => boolean,
): Lane[] {
  return pests.flatMap((one) => {
    const { pest, counted, waves } = one;
    const name = capital(pestNames[pest]);
    if (!isFound(one)) return waves.length === 0 ? [] : [undated(pest, name)];
    return waves.map(({ adults }, index) => ({
      key: `${pest} ${index}`,
      name,
      second: `${waveName(index)}, by counts`,
      pest: true,
      stages: [],
      range: adults,
      words: `adults ${counted.unit === 'trap-week' ? 'fly' : 'come'} ${eightOfTen(adults, calendar)}`,
    }));
  });
}

/** Of a pest that was never found possible seasons agree on dates that nothing seen bears out. */
const undated = (pest: PestId, name: string): Lane => ({
  key: `${pest} undated`,
  name,
  second: 'none found so far',
  pest: true,
  stages: [],
  words: 'no wave can be dated until some are found',
});

function planLanes({ plan, toOrder }: Advice, { timeZone }: Calendar): Lane[] {
  const noon = (day: string) => instantOf(day, 12, timeZone);
  const all = toOrder && toOrder.length > 0 ? toOrder : plan ? [plan] : [];
  return all.map(({ enemy, number, windowFrom, windowTo, lookOn }) => ({
    key: `plan ${enemy}`,
    name: capital(enemyWords[enemy].name),
    second: 'window to set out',
    pest: false,
    stages: [],
    window: { fromMs: noon(windowFrom), toMs: noon(windowTo) },
    words: `${animals(number, enemy)}, ${dayAndMonth(windowFrom)} to ${dayAndMonth(windowTo)}; look from ${dayAndMonth(lookOn)}`,
  }));
}

/** Pests first, each with its own; then the friends. `isFound` says of a pest whether any was ever counted. */
export function lanesOf(
  { forecast, advice }: { forecast: Forecast; advice: Advice },
  calendar: Calendar,
  isFound: (pest: PestForecast) => boolean,
): Lane[] {
  const ledger = forecast.ledger.flatMap((entry) => generationLane(entry, calendar));
  const pests = [...ledger.filter(({ pest }) => pest), ...waveLanes(forecast, calendar, isFound)];
  pests.sort((a, b) => a.name.localeCompare(b.name));
  return [...pests, ...planLanes(advice, calendar), ...ledger.filter(({ pest }) => !pest)];
}

const dayMs = 86_400_000;
const shownBackMs = 35 * dayMs;

/** From five weeks ago, or since when there is something, to the last range. */
export function spanOf(lanes: readonly Lane[], asOfMs: number): { fromMs: number; toMs: number } {
  const starts = lanes.flatMap(({ stages }) => stages.map(({ fromMs }) => fromMs));
  const ends = lanes.flatMap(({ range, window }) => [
    ...(range ? [Date.parse(range.q975)] : []),
    ...(window ? [window.toMs] : []),
  ]);
  return {
    fromMs: Math.max(asOfMs - shownBackMs, Math.min(asOfMs - 3 * dayMs, ...starts)),
    toMs: Math.max(asOfMs + 14 * dayMs, ...ends) + 3 * dayMs,
  };
}

export const lanesAloud = (lanes: readonly Lane[]): string =>
  lanes.map(({ name, second, words }) => `${name}, ${second}: ${words}.`).join(' ');

export function lanesTable(lanes: readonly Lane[], { timeZone }: Calendar): FigureTable {
  const day = (time: string | number) => dayAndMonth(localDay(new Date(time).getTime(), timeZone));
  return {
    head: ['Who', 'What', 'Middle', 'Half', '8 of 10'],
    rows: lanes.flatMap(({ name, second, stages, range, window, words }) => [
      ...(range || window || stages.length > 0 ? [] : [[name, `${second}: ${words}`, '', '', '']]),
      ...stages.map((stage) => [
        name,
        `${second}: ${stage.name}`,
        `${day(stage.fromMs)} to ${day(stage.toMs)}`,
        '',
        '',
      ]),
      ...(range
        ? [
            [
              name,
              `${second}: grown`,
              day(range.q50),
              `${day(range.q25)} to ${day(range.q75)}`,
              `${day(range.q10)} to ${day(range.q90)}`,
            ],
          ]
        : []),
      ...(window ? [[name, second, `${day(window.fromMs)} to ${day(window.toMs)}`, '', '']] : []),
    ]),
  };
}
