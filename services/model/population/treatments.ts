/**
 * What a wash or spray takes from those it reaches: a share at once, then what stays on the leaf, falling by half in
 * `halfDays`. Shares are common practice, no source, except natural enemies under soap: 0.42 to 0.50 of
 * Phytoseiulus persimilis adults in the study of references (soft soap, 5 to 7 ml/l); neem residue: no effect on mirids
 * after 5 days (Tedeschi et al. 2001, J Appl Entomol 125:397). Real ones depend on product and hand.
 */
import type { Treatment, TreatmentKind } from '../season.ts';
import { dayMs } from '../units.ts';

export interface TreatmentEffect {
  eggs: number;
  young: number;
  adults: number;
  enemies: number;
  /** Share of adults and moving young, of pest and enemies, taken on the next day by what stays on the leaf; then falling. */
  residuePerDay: number;
  halfDays: number;
}

export const treatmentEffects: Record<TreatmentKind, TreatmentEffect> = {
  'water-jet': { eggs: 0.1, young: 0.4, adults: 0.5, enemies: 0.4, residuePerDay: 0, halfDays: 1 },
  soap: { eggs: 0.2, young: 0.7, adults: 0.6, enemies: 0.46, residuePerDay: 0, halfDays: 1 },
  oil: { eggs: 0.6, young: 0.8, adults: 0.5, enemies: 0.6, residuePerDay: 0.05, halfDays: 1 },
  neem: { eggs: 0.1, young: 0.3, adults: 0.1, enemies: 0.2, residuePerDay: 0.15, halfDays: 1 },
  pyrethrins: { eggs: 0.1, young: 0.6, adults: 0.8, enemies: 0.8, residuePerDay: 0.25, halfDays: 1.5 },
  sulphur: { eggs: 0, young: 0.1, adults: 0, enemies: 0.2, residuePerDay: 0.07, halfDays: 4 },
  'other-spray': { eggs: 0.1, young: 0.5, adults: 0.5, enemies: 0.6, residuePerDay: 0.15, halfDays: 2 },
};

/** Residue below this share counts as gone. */
const goneBelow = 0.01;

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
    for (let day = Math.max(0, first); day < span.days; day++) {
      const taken = takenAfter(effect, coveredShare, day - first);
      if (!taken) break;
      byDay[day] = both(byDay[day], taken);
    }
  }
  return byDay;
}

/** What is taken on the day itself, or by the residue on a later day; undefined when it is gone. */
function takenAfter(effect: TreatmentEffect, share: number, days: number): TakenByTreatment | undefined {
  if (days === 0) {
    return {
      eggs: effect.eggs * share,
      young: effect.young * share,
      adults: effect.adults * share,
      enemies: effect.enemies * share,
    };
  }
  const rest = effect.residuePerDay * 0.5 ** ((days - 1) / effect.halfDays);
  if (rest < goneBelow) return undefined;
  return { eggs: 0, young: rest * share, adults: rest * share, enemies: rest * share };
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
