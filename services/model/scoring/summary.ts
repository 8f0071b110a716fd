/** How good the forecasts of one pest were, from its scored counts. */
import type { PestId } from '../season.ts';
import { spreads } from './baselines.ts';
import { coverage } from './coverage.ts';
import type { IntervalScore } from './intervalScore.ts';
import { longestLead, type ScoredCount } from './replay.ts';

export interface LeadScore {
  /** Weeks ahead. */
  lead: number;
  counts: number;
  /** Mean CRPS on log(1 + count) of the forecast and of the baselines at the spread that did best in hindsight. */
  crps: number;
  last: number;
  trend: number;
}

export interface PestScore {
  pest: PestId;
  counts: number;
  leads: LeadScore[];
  /** Weighted interval score on log(1 + count), taken apart. */
  interval: IntervalScore;
  /** Share of counts inside the ranges that promise these shares. */
  coverage: { share50: number; share80: number; share95: number };
  spreadOfLast: number;
  spreadOfTrend: number;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** One score a pest, in the order in which pests come; none without counts. */
export function scoresByPest(scored: readonly ScoredCount[]): PestScore[] {
  return [...new Set(scored.map(({ pest }) => pest))].map((pest) => {
    const own = scored.filter((each) => each.pest === pest);
    const best = (of: 'last' | 'trend') => bestSpread(own, of);
    const [last, trend] = [best('last'), best('trend')];
    const places = own.map(({ place }) => place);
    const part = (of: keyof IntervalScore) => mean(own.map(({ interval }) => interval[of]));
    return {
      pest,
      counts: own.length,
      leads: Array.from({ length: longestLead }, (_, i) => i + 1).flatMap((lead) => {
        const at = own.filter((each) => each.lead === lead);
        if (at.length === 0) return [];
        return [
          {
            lead,
            counts: at.length,
            crps: mean(at.map(({ crps }) => crps)),
            last: mean(at.map((each) => each.last[last]!)),
            trend: mean(at.map((each) => each.trend[trend]!)),
          },
        ];
      }),
      interval: {
        total: part('total'),
        spread: part('spread'),
        overprediction: part('overprediction'),
        underprediction: part('underprediction'),
      },
      coverage: {
        share50: coverage(places, 0.5),
        share80: coverage(places, 0.8),
        share95: coverage(places, 0.95),
      },
      spreadOfLast: spreads[last]!,
      spreadOfTrend: spreads[trend]!,
    };
  });
}

/** Which of the spreads did best over all counts. */
function bestSpread(scored: readonly ScoredCount[], of: 'last' | 'trend'): number {
  const means = spreads.map((_, i) => mean(scored.map((each) => each[of][i]!)));
  return means.indexOf(Math.min(...means));
}
