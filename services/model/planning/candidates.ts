/** What could be done about one pest: leave it, a parcel of each suitable enemy, a wash. */
import type { Fit } from '../forecast.ts';
import type { Ahead } from '../inference/summary.ts';
import type { Candidate, Condition, PestForecast, ReleasePlan } from '../outcome.ts';
import { huntersOf } from '../population/world.ts';
import type { EnemyId, PestId, Place, Season } from '../season.ts';
import { enemyTraits, speciesById } from '../species/catalogue.ts';
import type { SpeciesRecord } from '../species/record.ts';
import { judgeConditions } from './conditions/all.ts';
import { parcelNow } from './drafts.ts';
import type { Evidence } from './evidence.ts';
import { washCosts } from './loss.ts';
import { parcelToOrder } from './parcel.ts';
import { releaseOf, washTomorrow } from './ways.ts';

export interface ReleaseOption {
  candidate: Candidate & { plan: ReleasePlan };
  conditions: Condition[];
  suitable: boolean;
}

/** What every candidate is judged on. */
export interface Facts {
  pest: PestId;
  evidence: Evidence;
  asOfMs: number;
}

/** One parcel of each enemy that the supplier sells, best first; of all when no price is noted. */
export function releaseOptions(season: Season, fit: Fit, facts: Facts): ReleaseOption[] {
  const sold = Object.keys(season.place.supplier?.pricePerAnimal ?? {});
  return weighable(season.place, facts.pest)
    .map((record) => record.id as EnemyId)
    .filter((enemy) => sold.length === 0 || sold.includes(enemy))
    .map((enemy) => releaseOption(season, fit, facts, parcelToOrder(season, enemy, facts.asOfMs)))
    .sort(byWorth);
}

/** Enemies that hunt the pest, are known well enough to advise, and are right for such a place. */
export function weighable(place: Place, pest: PestId): SpeciesRecord[] {
  if (speciesById(pest).notAdvised !== undefined) return [];
  return huntersOf(pest).filter((record) => {
    const { release } = enemyTraits(record);
    if (release === undefined || record.notAdvised !== undefined) return false;
    return place.kind !== 'outdoors' || release.outdoors !== undefined;
  });
}

/** A parcel, after a wash or alone, with the forecast it would bring and the conditions on the day it is set out. */
export function releaseOption(
  season: Season,
  fit: Fit,
  facts: Facts,
  plan: ReleasePlan,
  { washFirst = false }: { washFirst?: boolean } = {},
): ReleaseOption {
  const { enemy: id, windowFrom } = plan;
  const enemy = speciesById(id);
  const traits = enemyTraits(enemy);
  const conditions = judgeConditions({
    ...facts,
    season,
    forecast: fit.forecast,
    enemy,
    traits,
    on: windowFrom,
  });
  const treatments = washFirst ? [washTomorrow(season, facts.asOfMs)] : [];
  const ahead = fit.withMore(facts.pest, { releases: [releaseOf(season, plan)], treatments });
  const { label } = parcelNow(washFirst ? 'wash-then' : 'now', plan);
  return {
    candidate: {
      ...asCandidate(washFirst ? `wash-then-${id}` : `release-${id}`, label, ahead),
      ...(plan.price !== undefined ? { price: plan.price + (washFirst ? washCosts : 0) } : {}),
      plan,
      ...(washFirst ? { washFirst } : {}),
    },
    conditions,
    suitable: conditions.every((c) => c.verdict !== 'fails'),
  };
}

/** A soap wash tomorrow, as the forecast sees it. */
export function washCandidate(season: Season, fit: Fit, pest: PestId, asOfMs: number): Candidate {
  const ahead = fit.withMore(pest, { treatments: [washTomorrow(season, asOfMs)] });
  return { ...asCandidate('wash', 'Wash, no release', ahead), price: washCosts };
}

export const leaveCandidate = (ahead: PestForecast): Candidate => ({
  ...asCandidate('leave', 'Leave it', ahead),
  price: 0,
});

/** Weeks ahead that are expected over the limit. */
export const weeksOver = ({ weeks }: { weeks: readonly { probabilityOverLimit: number }[] }): number =>
  weeks.reduce((sum, week) => sum + week.probabilityOverLimit, 0);

/** Suitable first; then the lower chance to pass the limit by tenths and the fewer weeks over it, since less is noise; then the price. */
function byWorth(a: ReleaseOption, b: ReleaseOption): number {
  const tenths = (o: ReleaseOption) => Math.round(o.candidate.passesLimit * 10);
  return (
    Number(b.suitable) - Number(a.suitable) ||
    tenths(a) - tenths(b) ||
    Math.round(weeksOver(a.candidate)) - Math.round(weeksOver(b.candidate)) ||
    (a.candidate.price ?? 0) - (b.candidate.price ?? 0)
  );
}

const asCandidate = (id: string, label: string, ahead: Pick<Ahead, 'passesLimit' | 'weeks'>) => ({
  id,
  label,
  passesLimit: ahead.passesLimit.probability,
  weeks: ahead.weeks,
});
