/** Every hindcast of the page: on the half of the logs the constants were chosen on, and on the other. */
import { seeded, standardNormal } from '../../services/model/numerics/random.ts';
import { type HindcastOptions, hindcast, type Said } from './hindcast.ts';
import {
  coldGlasshouse,
  halfOf,
  type Log,
  openAir,
  simulatedHouse,
  tunnels,
  warmGlasshouse,
} from './logs.ts';
import { byLead, covered, type LeadScore } from './scores.ts';

export const leads = [1, 2, 3, 5, 7, 10, 14] as const;

export interface Line {
  what: string;
  days: number;
  scores: LeadScore[];
  /** Share of all days 1 to 14 ahead inside the ranges that promise 50, 80 and 95 %. */
  covered: [number, number, number];
}

/** The same of the tunnel houses, whose logs are not in the repository: kept from the last run that had them. */
export interface TunnelLines {
  chosen: Line[];
  measured: Line[];
  young: Line[];
}

const always = Number.POSITIVE_INFINITY;
const midsummer = Date.UTC(2013, 6, 1);
const halfYear = Date.UTC(2018, 6, 1);
/** The tunnels are split in the winter between their two summers. */
const winter = Date.UTC(2022, 0, 15);

/** An outdoor forecast that errs as one would: by 0.8 °C on the first day and 0.25 more each day, from memory. */
function madeUpError(leadDays: number, originMs: number): number {
  return (0.8 + 0.25 * (leadDays - 1)) * standardNormal(seeded(originMs / 86_400_000));
}

const withAir: HindcastOptions = { outdoors: () => 0 };
const withForecast: HindcastOptions = { outdoors: madeUpError };
const threeDays: HindcastOptions = { keepDays: 3, firstDay: 3 };

function lineOf(log: Log, what: string, options: HindcastOptions = {}): Line {
  return lineFrom(`${log.name}${what}`, hindcast(log, options));
}

function lineFrom(what: string, said: readonly Said[]): Line {
  const scores = byLead(said, leads);
  const shares = [0.5, 0.8, 0.95].map((share) => covered(said, share));
  return { what, days: scores[0]!.days, scores, covered: [shares[0]!, shares[1]!, shares[2]!] };
}

const threeWays = (log: Log) => [
  lineOf(log, ''),
  lineOf(log, ', air outdoors known', withAir),
  lineOf(log, ', with a forecast', withForecast),
];

export function chosenLines(): Line[] {
  return [
    lineOf(halfOf(openAir(), 0, midsummer), ', January to June'),
    ...threeWays({ ...coldGlasshouse(), name: 'heated glasshouse, winter' }),
    ...threeWays({ ...halfOf(simulatedHouse(), 0, halfYear), name: 'simulated house, January to June' }),
  ];
}

export function measuredLines(): Line[] {
  return [
    lineOf(halfOf(openAir(), midsummer, always), ', July to December'),
    ...threeWays({ ...warmGlasshouse(), name: 'heated glasshouse, May' }),
    ...threeWays({
      ...halfOf(simulatedHouse(), halfYear, always),
      name: 'simulated house, July to December',
    }),
  ];
}

export function youngLines(): Line[] {
  return [
    lineOf(halfOf(openAir(), midsummer, always), '', threeDays),
    lineOf({ ...warmGlasshouse(), name: 'heated glasshouse, May' }, '', threeDays),
    lineOf({ ...warmGlasshouse(), name: 'heated glasshouse, May' }, ', with a forecast', {
      ...threeDays,
      ...withForecast,
    }),
    lineOf(halfOf(simulatedHouse(), halfYear, always), ', with a forecast', {
      ...threeDays,
      ...withForecast,
    }),
  ];
}

export function tunnelLines(folder: string): TunnelLines {
  const both = tunnels(folder);
  return {
    chosen: both.map((log) => lineOf(halfOf(log, 0, winter), ', June 2021 to January 2022')),
    measured: both.map((log) => lineOf(halfOf(log, winter, always), ', February to September 2022')),
    young: both.map((log) => lineOf(halfOf(log, winter, always), '', threeDays)),
  };
}
