/** The decision about one pest: the plain rule first, the forecast with and without as evidence. */
import { addDays, localDay } from '../climate/calendar.ts';
import type { Fit } from '../forecast.ts';
import type { Candidate, Condition, PestForecast } from '../outcome.ts';
import type { EnemyId, Order, PestId, Season } from '../season.ts';
import { enemiesFor, type ReleaseOption, releaseOption, washCandidate } from './candidates.ts';
import { type Evidence, evidence } from './evidence.ts';
import { daysSinceParcel, type Trigger, trigger } from './trigger.ts';

/** Below this chance to pass the limit nothing is bought: "unlikely" in our words. Judgement. */
const worthSpending = 0.35;
/** A wash comes first when even the best parcel leaves it probable that the limit is passed. */
const stillProbable = 0.65;

export type Choice = 'leave' | 'wait' | 'order' | 'release' | 'top-up' | 'wash';

export interface PestDecision {
  pest: PestId;
  choice: Choice;
  because:
    | (Trigger & { fires: false })['because']
    | 'rule'
    | 'unlikely'
    | 'too-cold'
    | 'not-here'
    | 'parcel-arrived'
    | 'parcel-ordered';
  evidence: Evidence;
  ahead: PestForecast;
  chosen?: ReleaseOption;
  order?: Order;
  conditions: Condition[];
  candidates: Candidate[];
}

const urgency: Record<Choice, number> = { release: 5, wash: 4, 'top-up': 3, order: 3, wait: 2, leave: 1 };

/** The most urgent of the decisions; between equals the pest more likely to pass its limit. */
export function mostUrgent(decisions: readonly PestDecision[]): PestDecision | undefined {
  return [...decisions].sort(
    (a, b) =>
      urgency[b.choice] - urgency[a.choice] ||
      b.ahead.passesLimit.probability - a.ahead.passesLimit.probability,
  )[0];
}

export function decide(season: Season, fit: Fit, ahead: PestForecast, asOfMs: number): PestDecision {
  const { pest } = ahead;
  const facts = evidence(season, pest, asOfMs);
  const enemies = enemiesFor(season, pest);
  const ids = enemies.map((record) => record.id as EnemyId);
  const since = daysSinceParcel(season, ids, asOfMs);
  const fired = trigger({
    evidence: facts,
    daysLeft: daysLeft(season, asOfMs),
    ...(since !== undefined ? { daysSinceParcel: since } : {}),
  });
  const left: Candidate = {
    id: 'leave',
    label: 'Leave it',
    passesLimit: ahead.passesLimit.probability,
    weeks: ahead.weeks,
    price: 0,
  };
  const base = { pest, evidence: facts, ahead, conditions: [], candidates: [left] };
  const open = openOrder(season, ids, asOfMs);
  if (open === undefined && !fired.fires)
    return { ...base, choice: leaveOrWait(fired.because), because: fired.because };

  const options = enemies
    .map((enemy) => releaseOption(season, fit, { pest, evidence: facts, enemy, asOfMs }))
    .sort(byWorth);
  const wash = washCandidate(season, fit, pest, asOfMs);
  const all = { ...base, candidates: [...options.map((o) => o.candidate), wash, left] };
  if (open) {
    const arrived = open.arrivedAt !== undefined;
    const chosen = options.find((o) => o.candidate.plan.enemy === open.enemy);
    return {
      ...all,
      choice: arrived ? 'release' : 'wait',
      because: arrived ? 'parcel-arrived' : 'parcel-ordered',
      order: open,
      ...(chosen ? { chosen, conditions: chosen.conditions } : {}),
    };
  }
  if (ahead.passesLimit.probability < worthSpending) return { ...all, choice: 'wait', because: 'unlikely' };
  const best = options.find((o) => o.suitable);
  if (best === undefined) {
    const blocked = options[0];
    const indoors = blocked?.conditions.find((c) => c.rule === 'indoors')?.verdict !== 'fails';
    return {
      ...all,
      choice: indoors ? 'wash' : 'leave',
      because: indoors ? 'too-cold' : 'not-here',
      conditions: blocked?.conditions ?? [],
    };
  }
  const overNow = (ahead.weeks[0]?.catchPerTrap.q50 ?? 0) > ahead.limitPerTrapWeek;
  const washFirst =
    overNow && best.candidate.passesLimit > stillProbable && wash.passesLimit < best.candidate.passesLimit;
  return {
    ...all,
    choice: washFirst ? 'wash' : since === undefined ? 'order' : 'top-up',
    because: 'rule',
    chosen: best,
    conditions: best.conditions,
  };
}

const leaveOrWait = (because: (Trigger & { fires: false })['because']): Choice =>
  because === 'no-recent-count' || because === 'too-few' || because === 'seen-once' ? 'wait' : 'leave';

/** Suitable first; then the lower chance to pass the limit by tenths, since less is noise; then the price. */
function byWorth(a: ReleaseOption, b: ReleaseOption): number {
  const tenths = (o: ReleaseOption) => Math.round(o.candidate.passesLimit * 10);
  return (
    Number(b.suitable) - Number(a.suitable) ||
    tenths(a) - tenths(b) ||
    (a.candidate.price ?? 0) - (b.candidate.price ?? 0)
  );
}

/** An order of these enemies that has not been released yet. */
function openOrder(season: Season, enemies: readonly EnemyId[], asOfMs: number): Order | undefined {
  return season.orders
    .filter((o) => enemies.includes(o.enemy) && Date.parse(o.orderedAt) <= asOfMs)
    .filter((o) => asOfMs - Date.parse(o.orderedAt) < 28 * 86_400_000)
    .find(
      (o) =>
        !season.releases.some((r) => r.enemy === o.enemy && Date.parse(r.time) >= Date.parse(o.orderedAt)),
    );
}

/** Days from now to the end of the season in the place's own calendar, this year's end. */
function daysLeft(season: Season, asOfMs: number): number {
  const today = localDay(asOfMs, season.place.timeZone);
  const end = `${today.slice(0, 4)}-${season.place.seasonEnd}`;
  return Math.round((Date.parse(end) - Date.parse(today)) / 86_400_000);
}

export const nextCountDay = (season: Season, lastCountMs: number | undefined, asOfMs: number): string => {
  const today = localDay(asOfMs, season.place.timeZone);
  if (lastCountMs === undefined) return today;
  const due = addDays(localDay(lastCountMs, season.place.timeZone), 7);
  return [due, today].sort().at(-1) ?? today;
};
