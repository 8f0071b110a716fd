/** Real logs of houses and of the air outdoors, hour by hour. Their clocks are taken as they stand. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type House, stepHouse } from '../../simulators/glasshouse.ts';

export interface Log {
  name: string;
  latitudeDeg: number;
  kind: 'glasshouse' | 'outdoors';
  hours: readonly LoggedHour[];
}

export interface LoggedHour {
  timeMs: number;
  insideC?: number;
  outsideC?: number;
}

interface Columns {
  time: string;
  inside: string;
  outside?: string;
}

const shipped = 'tests/data';

function hoursOf(file: string, columns: Columns): LoggedHour[] {
  const [head = '', ...lines] = readFileSync(file, 'utf8').trim().split('\n');
  const names = head.split(',');
  const at = (cells: readonly string[], name: string | undefined) => {
    const text = name === undefined ? '' : (cells[names.indexOf(name)] ?? '');
    return text === '' ? undefined : Number(text);
  };
  return lines.map((line) => {
    const cells = line.split(',');
    const time = cells[names.indexOf(columns.time)]!.replace('Z', '');
    const [insideC, outsideC] = [at(cells, columns.inside), at(cells, columns.outside)];
    return {
      timeMs: Date.parse(`${time}:00Z`),
      ...(insideC !== undefined && { insideC }),
      ...(outsideC !== undefined && { outsideC }),
    };
  });
}

const glasshouse = (period: string): Log => ({
  name: `heated glasshouse, ${period}`,
  latitudeDeg: 52,
  kind: 'glasshouse',
  hours: hoursOf(join(shipped, `glasshouse-climate/bleiswijk-2022-${period}.csv`), {
    time: 'time',
    inside: 'insideC',
    outside: 'outsideC',
  }),
});

/** Heated and computer-controlled, with the air outdoors: one cold and one warm period. */
export const coldGlasshouse = () => glasshouse('feb-mar');
export const warmGlasshouse = () => glasshouse('may-jun');

/** A place in the open: an airport for a year. */
export const openAir = (): Log => ({
  name: 'open air, New York',
  latitudeDeg: 40.6,
  kind: 'outdoors',
  hours: hoursOf(join(shipped, 'outdoor-weather/new-york-jfk-2013.csv'), { time: 'timeUTC', inside: 'airC' }),
});

/** Two unheated tunnel houses; their licence keeps them out of this repository, so the folder is named. */
export function tunnels(folder: string): Log[] {
  return [1, 2].map((n) => {
    const file = join(folder, `tunnel-${n}.csv`);
    if (!existsSync(file)) throw new Error(`There is no ${file}: name the folder of the tunnel logs.`);
    return {
      name: `tunnel ${n}`,
      latitudeDeg: 45.5,
      kind: 'glasshouse' as const,
      hours: hoursOf(file, { time: 'time', inside: 'refC' }),
    };
  });
}

/** The part of a log before or from an instant on. */
export function halfOf(log: Log, fromMs: number, toMs: number): Log {
  return { ...log, hours: log.hours.filter(({ timeMs }) => timeMs >= fromMs && timeMs < toMs) };
}

/**
 * An unheated hobby house under the sky of a typical year at 45 N: the weather is real, the house is the simulator's,
 * whose equations share nothing with the outlook. Months come from different years and are joined as one.
 */
export function simulatedHouse(): Log {
  const [, ...lines] = readFileSync(join(shipped, 'outdoor-weather/pvgis-tmy-45N-8E.csv'), 'utf8')
    .trim()
    .split('\n');
  let state = { airC: 5, groundC: 5, vapourGm3: 6 };
  const hours = lines.map((line, hour) => {
    const [, airC, globalWm2] = line.split(',');
    const outdoors = { outdoorC: Number(airC), globalWm2: Number(globalWm2) };
    let insideC = 0;
    for (let quarter = 0; quarter < 4; quarter += 1) {
      state = stepHouse(hobbyHouse, state, outdoors, 900).state;
      insideC += state.airC / 4;
    }
    return { timeMs: Date.UTC(2018, 0, 1, hour), insideC, outsideC: outdoors.outdoorC };
  });
  return { name: 'simulated unheated house', latitudeDeg: 45, kind: 'glasshouse', hours };
}

const hobbyHouse: House = {
  skinWm2K: 12,
  sunShare: 0.4,
  ventFromC: 24,
  ventWm2K: 40,
  heatToC: 0,
  heaterWm2: 0,
};
