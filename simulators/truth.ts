/** What really happened in the garden, which nobody in it can see: the measure of forecasts and advice. */
import type { LeafCheck, TrapCount } from '../services/model/index.ts';
import { type Kind, kinds } from './biology.ts';
import { type Colony, isAdult } from './colony.ts';
import { forEachKind } from './species.ts';

export type LeafKind = LeafCheck['seen'][number]['kind'];
export type CardKind = keyof TrapCount['counts'];

export interface Truth {
  startMs: number;
  areaM2: number;
  plants: number;
  /** Clumping of the counts on a card and of wrong insects, per card and week: what the limit may know. */
  cardK: number;
  wrongPerWeek: number;
  /** At the end of each day, per m2 of ground. Of a wasp, `young` are hosts that carry her young. */
  days: Record<Kind, { adults: number[]; young: number[] }>;
  /** At the end of each week, counted or not: expected on a new whole card hung for it, wrong insects included. */
  cards: { endMs: number; trapId: string; mean: Partial<Record<CardKind, number>> }[];
  /** At the end of each week: expected share of leaves with any of a kind. */
  leaves: { endMs: number; share: Partial<Record<LeafKind, number>> }[];
}

export const newTruth = (
  about: Pick<Truth, 'startMs' | 'areaM2' | 'plants' | 'cardK' | 'wrongPerWeek'>,
): Truth => ({
  ...about,
  days: forEachKind(() => ({ adults: [], young: [] })),
  cards: [],
  leaves: [],
});

export function writeDay(truth: Truth, colonies: Record<Kind, Colony>) {
  for (const kind of kinds) {
    const colony = colonies[kind];
    let adults = 0;
    for (const insect of colony.insects) if (isAdult(colony, insect)) adults += 1;
    const perM2 = colony.weight / truth.areaM2;
    truth.days[kind].adults.push(adults * perM2);
    truth.days[kind].young.push((colony.insects.length - adults) * perM2);
  }
}

/**
 * Middle of the time at which the young of a moment became adult, or undefined when none did: the first wave that
 * was ahead at that moment. `days` of the season had passed then.
 */
export function emergenceOfYoung(colony: Colony, startMs: number, days: number): number | undefined {
  const ahead = [...colony.emerged]
    .filter(([day]) => day > days)
    .map(([day, byBirth]) => {
      const young = [...byBirth].filter(([born]) => born <= days);
      return { day, number: young.reduce((sum, [, number]) => sum + number, 0) };
    })
    .sort((a, b) => a.day - b.day);
  const half = ahead.reduce((sum, { number }) => sum + number, 0) / 2;
  let passed = 0;
  for (const { day, number } of ahead) {
    passed += number;
    // Somewhere in the course of that day.
    if (number > 0 && passed >= half) return startMs + (day - 0.5) * 86_400_000;
  }
  return undefined;
}
