/**
 * Cages that others counted (tests/data), each as a season: its temperature, what was counted as leaf checks, what was
 * put in. What a file does not say is assumed here, and told on the page (cagePage.ts).
 */
import { type PestId, type Release, type Season, seasonSchema } from '../services/model/index.ts';
import { readCsv } from './csv.ts';

export interface Cage {
  series: SeriesId;
  season: Season;
}

export type SeriesId = 'wasps-20' | 'wasps-23' | 'ervi' | 'ladybirds';

/** What the cages of a series share. */
interface Series {
  pest: PestId;
  areaM2: number;
  /** All leaves of the plants, ten a plant. */
  leaves: number;
  temperatureC: number;
}

const arabidopsis = { pest: 'myzus-persicae', areaM2: 0.36, leaves: 80 } as const;
export const seriesById: Record<SeriesId, Series> = {
  'wasps-20': { ...arabidopsis, temperatureC: 20 },
  'wasps-23': { ...arabidopsis, temperatureC: 23 },
  ervi: { pest: 'macrosiphum-euphorbiae', areaM2: 0.36, leaves: 160, temperatureC: 20 },
  ladybirds: { pest: 'macrosiphum-euphorbiae', areaM2: 0.2, leaves: 10, temperatureC: 20 },
};

/** One count of a whole cage; mummies are absent where nobody looked for them. */
interface Count {
  day: number;
  aphids: number;
  mummies?: number;
}

type PutIn = Pick<Release, 'enemy' | 'form' | 'number'> & { day: number };

/** All cages, series by series. */
export const allCages = (): Cage[] => [...waspCages(), ...erviCages(), ...ladybirdCages()];

/** Weekly, two aphids together; after the last of either nothing was counted. */
function waspCages(): Cage[] {
  const rows = readCsv('tests/data/aphid-parasitoid-cages/cages.csv');
  return byCage(rows, ({ temperatureC, cage }) => `${temperatureC} ${cage}`).map(([first, ...rest]) => {
    const counted = [first, ...rest].filter(
      (row) => row.brevicoryneBrassicae !== '' || row.lipaphisErysimi !== '',
    );
    const counts = counted.map(
      (row): Count => ({
        day: daysBetween(first.date!, row.date!),
        aphids: Number(row.brevicoryneBrassicae) + Number(row.lipaphisErysimi),
        ...(row.mummies !== '' && { mummies: Number(row.mummies) }),
      }),
    );
    const wasps = counted.map(({ adultParasitoids }) => Number(adultParasitoids));
    const series = first.temperatureC === '20' ? 'wasps-20' : 'wasps-23';
    return cage(series, first.cage!, counts, waspsPutIn('aphidius-colemani', counts, wasps));
  });
}

/** Twice a week, both lines together; days on which no plant was counted are left out. */
function erviCages(): Cage[] {
  const rows = readCsv('tests/data/aphid-aphidius-ervi-cages/cages.csv').filter(
    (row) => row.cage === 'WASP' && row.plantsCounted === '16',
  );
  return byCage(rows, ({ rep }) => rep!).map((own) => {
    const counts = own.map(
      ({ day, aphidsTotal, mummies }): Count => ({
        day: Number(day),
        aphids: Number(aphidsTotal),
        mummies: Number(mummies),
      }),
    );
    const wasps = own.map(({ adultWasps, waspsRemoved }) => Number(adultWasps) - Number(waspsRemoved));
    return cage('ervi', own[0].rep!, counts, waspsPutIn('aphidius-ervi', counts, wasps));
  });
}

/** Every third day, as nobody counts daily; filled-in days and those after the plant died are left out. */
function ladybirdCages(): Cage[] {
  const rows = readCsv('tests/data/aphid-ladybird-cages/cages.csv').filter(
    ({ day, aphidsObserved, plantAlive }) =>
      aphidsObserved === 'yes' && plantAlive === '1' && (Number(day) < -1 || Number(day) % 3 === 0),
  );
  return byCage(rows, ({ cage }) => cage!).map((own) => {
    const counts = own.map(({ day, aphids }): Count => ({ day: Number(day), aphids: Number(aphids) }));
    const beetles: PutIn = { day: 0, enemy: 'adalia-bipunctata', form: 'larvae', number: 3 };
    return cage('ladybirds', own[0].cage!, counts, beetles);
  });
}

/** On the day of the last count before any was seen, as many as were seen first. */
function waspsPutIn(
  enemy: Release['enemy'],
  counts: readonly Count[],
  wasps: readonly number[],
): PutIn | undefined {
  const first = wasps.findIndex((number) => number > 0);
  if (first < 1) return undefined;
  return { day: counts[first - 1]!.day, enemy, form: 'adults', number: Math.round(wasps[first]!) };
}

type Row = Record<string, string>;

function byCage(rows: readonly Row[], keyOf: (row: Row) => string): [Row, ...Row[]][] {
  const groups = new Map<string, [Row, ...Row[]]>();
  for (const row of rows) {
    const own = groups.get(keyOf(row));
    if (own) own.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return [...groups.values()];
}

const dayMs = 86_400_000;
const daysBetween = (from: string, to: string) => Math.round((Date.parse(to) - Date.parse(from)) / dayMs);

/** Dates are moved, all cages to one spring: chambers know no time of the year, and the place lies on the equator. */
const firstDay = Date.parse('2020-02-01');
const timeOf = (day: number, hour: number) =>
  new Date(firstDay + day * dayMs + hour * 3_600_000).toISOString();

function cage(id: SeriesId, name: string, counts: readonly Count[], putIn: PutIn | undefined): Cage {
  const { pest, areaM2, leaves, temperatureC } = seriesById[id];
  const start = counts[0]!.day;
  const season = seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: `${id}-${name}`,
      name: `${id} ${name}`,
      kind: 'room',
      areaM2,
      latitudeDeg: 0,
      longitudeDeg: 0,
      timeZone: 'UTC',
      pests: [pest],
      limits: {},
      seasonEnd: '12-31',
    },
    sensors: [{ id: 'chamber', name: 'chamber' }],
    readings: readingsAt(temperatureC, counts.at(-1)!.day - start),
    leafChecks: counts.map(({ day, aphids, mummies }) => ({
      id: `day-${day}`,
      time: timeOf(day - start, 12),
      leaves,
      seen: [
        { kind: 'aphid', total: Math.round(aphids) },
        ...(mummies === undefined ? [] : [{ kind: 'mummy', total: Math.round(mummies) }]),
      ],
    })),
    releases: putIn ? [released(putIn, start)] : [],
  });
  return { series: id, season };
}

const released = ({ day, ...what }: PutIn, start: number) => ({
  id: 'put-in',
  ...what,
  time: timeOf(day - start, 18),
});

/** Every two hours, with the swing of a thermostat: a sensor that always says the same is not believed. */
const readingsAt = (temperatureC: number, days: number) =>
  Array.from({ length: 12 * (days + 1) }, (_, i) => ({
    sensorId: 'chamber',
    time: timeOf(0, 2 * i),
    temperatureC: temperatureC + (i % 2 === 0 ? 0.1 : -0.1),
  }));
