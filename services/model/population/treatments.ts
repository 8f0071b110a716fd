/**
 * What a wash or spray takes from those it reaches: a share at once, and a residue for some days. Shares are
 * common practice, no source, except natural enemies under soap: 0.42 to 0.50 of Phytoseiulus persimilis adults
 * in the study of references (soft soap, 5 to 7 ml/l). Real ones depend on product and hand.
 */
import type { Treatment, TreatmentKind } from '../season.ts';
import { dayMs } from '../units.ts';

export interface TreatmentEffect {
  eggs: number;
  young: number;
  adults: number;
  enemies: number;
  /** Share of adults and moving young taken on each later day by what stays on the leaf. */
  residuePerDay: number;
  residueDays: number;
}

export const treatmentEffects: Record<TreatmentKind, TreatmentEffect> = {
  'water-jet': { eggs: 0.1, young: 0.4, adults: 0.5, enemies: 0.4, residuePerDay: 0, residueDays: 0 },
  soap: { eggs: 0.2, young: 0.7, adults: 0.6, enemies: 0.46, residuePerDay: 0, residueDays: 0 },
  oil: { eggs: 0.6, young: 0.8, adults: 0.5, enemies: 0.6, residuePerDay: 0.05, residueDays: 2 },
  neem: { eggs: 0.1, young: 0.3, adults: 0.1, enemies: 0.2, residuePerDay: 0.1, residueDays: 5 },
  pyrethrins: { eggs: 0.1, young: 0.6, adults: 0.8, enemies: 0.8, residuePerDay: 0.15, residueDays: 4 },
  sulphur: { eggs: 0, young: 0.1, adults: 0, enemies: 0.2, residuePerDay: 0.05, residueDays: 7 },
  'other-spray': { eggs: 0.1, young: 0.5, adults: 0.5, enemies: 0.6, residuePerDay: 0.1, residueDays: 5 },
};

/** Shares taken on one day, all treatments together. */
export interface TakenByTreatment {
  eggs: number;
  young: number;
  adults: number;
  enemies: number;
}

/** Shares taken by day (days since `startMs`); days without any are undefined. */
export function treatmentsByDay(
  treatments: readonly Treatment[],
  span: { startMs: number; days: number },
): (TakenByTreatment | undefined)[] {
  const byDay = new Array<TakenByTreatment | undefined>(span.days).fill(undefined);
  for (const { kind, time, coveredShare } of treatments) {
    const effect = treatmentEffects[kind];
    const first = Math.floor((Date.parse(time) - span.startMs) / dayMs);
    for (let day = Math.max(0, first); day <= first + effect.residueDays && day < span.days; day++) {
      byDay[day] = both(byDay[day], reached(effect, coveredShare, day === first));
    }
  }
  return byDay;
}

function reached(effect: TreatmentEffect, share: number, atOnce: boolean): TakenByTreatment {
  const rest = effect.residuePerDay * share;
  if (!atOnce) return { eggs: 0, young: rest, adults: rest, enemies: rest };
  return {
    eggs: effect.eggs * share,
    young: effect.young * share,
    adults: effect.adults * share,
    enemies: effect.enemies * share,
  };
}

function both(one: TakenByTreatment | undefined, other: TakenByTreatment): TakenByTreatment {
  if (one === undefined) return other;
  const join = (a: number, b: number) => 1 - (1 - a) * (1 - b);
  return {
    eggs: join(one.eggs, other.eggs),
    young: join(one.young, other.young),
    adults: join(one.adults, other.adults),
    enemies: join(one.enemies, other.enemies),
  };
}
