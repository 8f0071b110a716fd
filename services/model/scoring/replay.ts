/**
 * A season played again week by week: after each round of counts the forecast of that moment is made from what was
 * known then, and held against the rounds of the next four weeks.
 */
import { type Fit, type ForecastOptions, fit as fitSeason } from '../forecast.ts';
import type { WeightedSample } from '../numerics/quantiles.ts';
import { type Random, seeded } from '../numerics/random.ts';
import type { CountedAs } from '../outcome.ts';
import type { PestId, Season } from '../season.ts';
import { dayMs } from '../units.ts';
import { asLast, asTrend, drawnAbout, spreads } from './baselines.ts';
import { randomisedPlace } from './coverage.ts';
import { crpsOfSample } from './crps.ts';
import { type IntervalScore, weightedIntervalScore } from './intervalScore.ts';
import { type Observed, observedRounds } from './observed.ts';

/** One count against what was said of it. Scores are on log(1 + count), in the unit of the pest. */
export interface ScoredCount {
  pest: PestId;
  asOf: string;
  /** When it was counted. */
  time: string;
  /** Weeks ahead, 1 to 4; of leaf totals, counts ahead. */
  lead: number;
  observed: number;
  crps: number;
  interval: IntervalScore;
  /** Its place in the predicted distribution, 0 to 1, ties drawn. */
  place: number;
  /** CRPS of the baselines by spread (baselines.ts). */
  last: number[];
  trend: number[];
}

export const longestLead = 4;
/** A forecast is scored from this round of counts on. */
export const firstRound = 4;

/** Scores of all forecasts of a season; `onForecast` hears of each as it is made. Data later than a forecast never reach it. */
export function replay(
  season: Season,
  options: ForecastOptions = {},
  onForecast: (asOf: string, made: Fit) => void = () => {},
): ScoredCount[] {
  const pests = season.place.pests.map((pest) => ({ pest, rounds: observedRounds(season, pest) }));
  const moments = new Set(
    pests.flatMap(({ rounds }) => rounds.slice(firstRound - 1).map(({ timeMs }) => timeMs)),
  );
  let earlier: Fit | undefined;
  return [...moments]
    .sort((a, b) => a - b)
    .flatMap((asOfMs) => {
      const due = pests.filter(({ rounds }) => isDue(rounds, asOfMs));
      if (due.length === 0) return [];
      const asOf = new Date(asOfMs).toISOString();
      const made = fitSeason(season, asOf, { ...options, ...(earlier ? { earlier } : {}) });
      earlier = made;
      onForecast(asOf, made);
      return due.flatMap(({ pest, rounds }) => {
        const { unit } = made.forecast.pests.find((each) => each.pest === pest)!.counted;
        return scoresOf({ pest, rounds, asOfMs, unit, ahead: made.ahead(pest) });
      });
    });
}

/** Enough rounds before, and one to come within four weeks. */
const isDue = (rounds: readonly Observed[], asOfMs: number): boolean =>
  rounds.filter(({ timeMs }) => timeMs <= asOfMs).length >= firstRound &&
  rounds.some(({ timeMs }) => timeMs > asOfMs && leadOf(timeMs, asOfMs) !== undefined);

/** Weeks ahead of a round that lies within three days of a whole number of weeks. */
function leadOf(timeMs: number, asOfMs: number): number | undefined {
  const days = (timeMs - asOfMs) / dayMs;
  const lead = Math.round(days / 7);
  return lead >= 1 && lead <= longestLead && Math.abs(days - 7 * lead) <= 3 ? lead : undefined;
}

interface Moment {
  pest: PestId;
  rounds: readonly Observed[];
  asOfMs: number;
  unit: CountedAs['unit'];
  ahead: ReturnType<Fit['ahead']>;
}

function scoresOf({ pest, rounds, asOfMs, unit, ahead }: Moment): ScoredCount[] {
  const before = rounds.filter(({ timeMs }) => timeMs <= asOfMs);
  const random = seeded(Math.floor(asOfMs / dayMs));
  return rounds.flatMap((round) => {
    const lead = round.timeMs > asOfMs ? leadOf(round.timeMs, asOfMs) : undefined;
    if (lead === undefined) return [];
    const said = { pest, asOfMs, before, unit, lead, weeks: lead, sample: ahead[lead - 1]!.counts };
    return scoresOfRound(round, said, random);
  });
}

/** What was said of one round, and what was known by then. */
export interface Said {
  pest: PestId;
  asOfMs: number;
  before: readonly Observed[];
  unit: CountedAs['unit'];
  /** By which the spread of the baselines grows, and how far their trend goes on. */
  lead: number;
  weeks: number;
  sample: WeightedSample;
}

/** The counts of a round against what was said of them. */
export function scoresOfRound({ timeMs, counts }: Observed, said: Said, random: Random): ScoredCount[] {
  const { pest, asOfMs, before, unit, lead, weeks } = said;
  const { values, weights } = said.sample;
  const logs = Array.from(values, Math.log1p);
  const byBaseline = [asLast(before), asTrend(before, weeks)].map((expectedLog) =>
    spreads.map((spread) => drawnAbout(expectedLog, { lead, spread, unit }, random).map(Math.log1p)),
  );
  return counts.map((observed) => {
    const log = Math.log1p(observed);
    const [last, trend] = byBaseline.map((bySpread) => bySpread.map((draws) => crpsOfSample(draws, log)));
    return {
      pest,
      asOf: new Date(asOfMs).toISOString(),
      time: new Date(timeMs).toISOString(),
      lead,
      observed,
      crps: crpsOfSample(logs, log, weights),
      interval: weightedIntervalScore({ values: logs, weights }, log),
      place: randomisedPlace(values, observed, random, weights),
      last: last!,
      trend: trend!,
    };
  });
}
