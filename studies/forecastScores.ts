/** From scored seasons to the numbers of the table. */
import { coverage, type PestId } from '../services/model/index.ts';
import type { CountScore, SeasonScore } from './forecastSeason.ts';

/** The baseline of a pest: as last time or by the trend, with one spread, whichever did best over all seasons. */
export interface Baseline {
  of: 'last' | 'trend';
  spread: number;
}

export interface Skill {
  counts: number;
  /** Mean CRPS on log(1 + count). */
  ours: number;
  baseline: number;
  limit: number;
  /** Share of the possible skill: (baseline - ours) / (baseline - limit). */
  share: number;
}

export const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length === 0) return undefined;
  const middle = (sorted.length - 1) / 2;
  return (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
}

/** Chosen in hindsight over all counts of a pest: the baseline's advantage. */
export function bestBaseline(counts: readonly Pick<CountScore, 'last' | 'trend'>[]): Baseline {
  const all = (['last', 'trend'] as const).flatMap((of) =>
    counts[0]![of].map((_, spread) => ({
      of,
      spread,
      crps: mean(counts.map((count) => count[of][spread]!)),
    })),
  );
  return all.reduce((best, one) => (one.crps < best.crps ? one : best));
}

export function skillOf(counts: readonly CountScore[], { of, spread }: Baseline): Skill {
  const ours = mean(counts.map(({ crps }) => crps));
  const limit = mean(counts.map((count) => count.limit));
  const baseline = mean(counts.map((count) => count[of][spread]!));
  return { counts: counts.length, ours, baseline, limit, share: (baseline - ours) / (baseline - limit) };
}

export const coverages = (scored: readonly { place: number }[]) => {
  const places = scored.map(({ place }) => place);
  return { half: coverage(places, 0.5), eight: coverage(places, 0.8), nineteen: coverage(places, 0.95) };
};

/** Pests in the order in which they were first forecast. */
export const pestsOf = (seasons: readonly SeasonScore[]): PestId[] => [
  ...new Set(seasons.flatMap(({ counts }) => counts.map(({ pest }) => pest))),
];

export const countsOf = (seasons: readonly SeasonScore[], pest: PestId): CountScore[] =>
  seasons.flatMap(({ counts }) => counts.filter((count) => count.pest === pest));
