/** What could be done about one pest: leave it, a parcel of each suitable enemy, a wash. */
import { addDays, localDay, startOfLocalDay } from '../climate/calendar.ts';
import type { Fit } from '../forecast.ts';
import type { Candidate, Condition, ReleasePlan } from '../outcome.ts';
import type { EnemyId, PestId, Release, Season, Treatment } from '../season.ts';
import { enemyRecords, enemyTraits } from '../species/catalogue.ts';
import type { EnemyTraits, SpeciesRecord } from '../species/record.ts';
import { judgeConditions } from './conditions/all.ts';
import { residueOver } from './conditions/residue.ts';
import { nextDelivery } from './delivery.ts';
import type { Evidence } from './evidence.ts';

/** A parcel is best set out on the day it comes; two days later it has lost much (common practice, no source). */
const keepsDays = 2;

export interface ReleaseOption {
  candidate: Candidate & { plan: ReleasePlan };
  conditions: Condition[];
  suitable: boolean;
}

/** Enemies that attack this pest and that the supplier sells; all of them when no price is noted. */
export function enemiesFor(season: Season, pest: PestId): SpeciesRecord[] {
  const sold = Object.keys(season.place.supplier?.pricePerAnimal ?? {});
  return enemyRecords
    .filter((record) => enemyTraits(record).attacks.some((attack) => attack.pest === pest))
    .filter((record) => sold.length === 0 || sold.includes(record.id));
}

/** One parcel of an enemy, at the first delivery after the waiting time, with the forecast it would bring. */
export function releaseOption(
  season: Season,
  fit: Fit,
  facts: { pest: PestId; evidence: Evidence; enemy: SpeciesRecord; asOfMs: number },
): ReleaseOption {
  const traits = enemyTraits(facts.enemy);
  const plan = parcel(season, facts.enemy, traits, facts.asOfMs);
  const conditions = judgeConditions({
    season,
    forecast: fit.forecast,
    traits,
    on: plan.windowFrom,
    ...facts,
  });
  const ahead = fit.withReleases(facts.pest, [asRelease(season, plan)]);
  return {
    candidate: {
      id: `release-${facts.enemy.id}`,
      label: `${pieces(plan.number, traits)} of ${facts.enemy.shortName}`,
      passesLimit: ahead.passesLimit.probability,
      weeks: ahead.weeks,
      ...(plan.price !== undefined ? { price: plan.price } : {}),
      plan,
    },
    conditions,
    suitable: conditions.every((c) => c.verdict !== 'fails'),
  };
}

/** A soap wash tomorrow, as the forecast sees it. */
export function washCandidate(season: Season, fit: Fit, pest: PestId, asOfMs: number): Candidate {
  const tomorrow = addDays(localDay(asOfMs, season.place.timeZone), 1);
  const wash: Treatment = {
    id: 'wash-tomorrow',
    kind: 'soap',
    time: noon(tomorrow, season.place.timeZone),
    coveredShare: 0.8,
  };
  const ahead = fit.withTreatment(pest, wash);
  return {
    id: 'wash',
    label: 'Wash, no release',
    passesLimit: ahead.passesLimit.probability,
    weeks: ahead.weeks,
    price: 0,
  };
}

/** `2 sachets`, from the number of animals. */
export function pieces(number: number, traits: EnemyTraits): string {
  const count = Math.max(1, Math.round(number / traits.release.perPiece));
  return `${count} ${traits.release.piece[count === 1 ? 0 : 1]}`;
}

function parcel(season: Season, enemy: SpeciesRecord, traits: EnemyTraits, asOfMs: number): ReleasePlan {
  const id = enemy.id as EnemyId;
  const delivery = nextDelivery(season.place, asOfMs, residueOver(season, id, asOfMs)?.day);
  const wanted = season.place.areaM2 * traits.release.perM2;
  const number = Math.ceil(wanted / traits.release.perPiece) * traits.release.perPiece;
  const supplier = season.place.supplier;
  const each = supplier?.pricePerAnimal[id];
  return {
    enemy: id,
    form: traits.release.form,
    number,
    perM2: number / season.place.areaM2,
    ...delivery,
    windowFrom: delivery.arrivesOn,
    windowTo: addDays(delivery.arrivesOn, keepsDays),
    lookOn: addDays(delivery.arrivesOn, traits.release.lookAfterDays),
    ...(supplier && each !== undefined
      ? { price: Math.round((supplier.parcelFee + each * number) * 100) / 100, currency: supplier.currency }
      : {}),
  };
}

const asRelease = (season: Season, plan: ReleasePlan): Release => ({
  id: `plan-${plan.enemy}`,
  enemy: plan.enemy,
  form: plan.form,
  number: plan.number,
  time: noon(plan.windowFrom, season.place.timeZone),
  aliveShare: 1,
});

const noon = (day: string, timeZone: string): string =>
  new Date(startOfLocalDay(day, timeZone) + 12 * 3_600_000).toISOString();
