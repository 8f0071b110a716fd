/** The decision about one pest: the plain rule first, the forecast with and without as evidence. */
import { addDays, localDay } from '../climate/calendar.ts';
import type { Fit } from '../forecast.ts';
import type { Candidate, Condition, PestForecast, ReleasePlan, Way } from '../outcome.ts';
import { huntersOf } from '../population/world.ts';
import type { EnemyId, Order, PestId, Release, Season } from '../season.ts';
import { speciesById } from '../species/catalogue.ts';
import { firstDayHome } from './awayDays.ts';
import {
  type Facts,
  leaveCandidate,
  type ReleaseOption,
  releaseOption,
  releaseOptions,
  washCandidate,
} from './candidates.ts';
import { type Evidence, evidence } from './evidence.ts';
import { daysLeft, endOfSeason } from './growingSeason.ts';
import { isSameParcel, openOrder, parcelOrdered } from './parcel.ts';
import { daysSince, type SilentBecause, trigger } from './trigger.ts';
import { canWashToday } from './washDay.ts';
import { actOfChoice, isClearGain, isWashFirstOf, type Weighed, weighWays } from './ways.ts';

/** Below this chance to pass the limit nothing is bought: "unlikely" in our words. Judgement. */
export const worthSpending = 0.35;
/** A wash comes first when even the best parcel leaves it probable that the limit is passed. */
const stillProbable = 0.65;

export type Choice = 'leave' | 'wait' | 'order' | 'release' | 'top-up' | 'wash';

export interface PestDecision {
  pest: PestId;
  choice: Choice;
  because:
    | SilentBecause
    | 'rule'
    | 'unlikely'
    /** A parcel would cost about what it spares, or more. */
    | 'no-clear-gain'
    /** A parcel spares more when it comes later. */
    | 'better-later'
    /** No enemy can be set out: `conditions` say why, or none is sold. */
    | 'no-enemy'
    | 'outdoors'
    /** Too little is published about the pest to weigh anything. */
    | 'little-known'
    | 'parcel-arrived'
    /** It has come, but residue would harm what is in it. */
    | 'parcel-held-back'
    | 'parcel-ordered';
  evidence: Evidence;
  ahead: PestForecast;
  chosen?: ReleaseOption;
  /** Of a parcel to buy or on its way: the plants are washed before it comes. */
  washFirst?: boolean;
  order?: Order;
  /** The newest release against this pest. */
  released?: Release;
  conditions: Condition[];
  candidates: Candidate[];
  /** Least expected loss first; absent when nothing had to be weighed. */
  ways?: readonly Weighed[];
  /** Of these the parcel now that was held against the others, with its wash if that is better. */
  act?: Weighed;
  /** The way advised. */
  advised?: Way;
}

/** To do something comes before waiting or leaving, which are alike: then the pest nearer its limit speaks. */
const urgency: Record<Choice, number> = { release: 4, wash: 3, 'top-up': 2, order: 2, wait: 1, leave: 1 };

/** The most urgent of the decisions; between equals the pest more likely to pass its limit. */
export function mostUrgent(decisions: readonly PestDecision[]): PestDecision | undefined {
  return [...decisions].sort(
    (a, b) =>
      urgency[b.choice] - urgency[a.choice] ||
      b.ahead.passesLimit.probability - a.ahead.passesLimit.probability,
  )[0];
}

/** Decides about one pest; `season` holds nothing later than now. */
export function decide(season: Season, fit: Fit, ahead: PestForecast, asOfMs: number): PestDecision {
  const { pest } = ahead;
  const facts: Facts = { pest, evidence: evidence(season, pest, asOfMs), asOfMs };
  const hunters = huntersOf(pest).map((record) => record.id as EnemyId);
  const released = newestRelease(season, hunters);
  const base = {
    pest,
    evidence: facts.evidence,
    ahead,
    conditions: [],
    candidates: [leaveCandidate(ahead)],
    ...(released ? { released } : {}),
  };
  const order = openOrder(season, hunters, asOfMs);
  if (order) return { ...base, ...withOrder(season, fit, ahead, facts, order) };
  const fired = trigger({
    evidence: facts.evidence,
    daysLeft: daysLeft(season.place, asOfMs),
    ...(released ? { daysSinceParcel: daysSince(released, asOfMs) } : {}),
  });
  if (fired.fires) return { ...base, ...weighed(season, fit, ahead, facts) };
  const tooLateForFriends = fired.because === 'late-in-season' && season.place.kind !== 'outdoors';
  if (tooLateForFriends && ahead.passesLimit.probability >= stillProbable) {
    const wash = washCandidate(season, fit, pest, asOfMs);
    return { ...base, choice: 'wash', because: fired.because, candidates: [wash, leaveCandidate(ahead)] };
  }
  return { ...base, choice: leaveOrWait(fired.because), because: fired.because };
}

type Outcome = Pick<PestDecision, 'choice' | 'because'> & Partial<PestDecision>;

/** A parcel is on its way or has come: nothing more is bought. */
function withOrder(season: Season, fit: Fit, ahead: PestForecast, facts: Facts, order: Order): Outcome {
  const plan = parcelOrdered(season, order, facts.asOfMs);
  const hasCome = order.arrivedAt !== undefined;
  const washFirst = !hasCome && isWashFirstOf(season, fit, facts, plan);
  const chosen = releaseOption(season, fit, facts, plan, { washFirst });
  const harmed = chosen.conditions.some(({ rule, verdict }) => rule === 'residue' && verdict === 'fails');
  return {
    choice: hasCome && !harmed ? 'release' : 'wait',
    because: !hasCome ? 'parcel-ordered' : harmed ? 'parcel-held-back' : 'parcel-arrived',
    order,
    chosen,
    ...(washFirst ? { washFirst } : {}),
    conditions: chosen.conditions,
    candidates: [chosen.candidate, leaveCandidate(ahead)],
  };
}

/** The rule has fired: what the forecast says of each way. */
function weighed(season: Season, fit: Fit, ahead: PestForecast, facts: Facts): Outcome {
  const outdoors = season.place.kind === 'outdoors';
  if (speciesById(facts.pest).notAdvised !== undefined)
    return outdoors ? { choice: 'leave', because: 'outdoors' } : { choice: 'wait', because: 'little-known' };
  const options = releaseOptions(season, fit, facts);
  const wash = washCandidate(season, fit, facts.pest, facts.asOfMs);
  const candidates = [...options.map((option) => option.candidate), wash, leaveCandidate(ahead)];
  if (ahead.passesLimit.probability < worthSpending) {
    return { choice: 'wait', because: 'unlikely', candidates };
  }
  if (outdoors)
    return {
      choice: 'leave',
      because: 'outdoors',
      conditions: options[0]?.conditions ?? [],
      candidates: [leaveCandidate(ahead), ...candidates.slice(0, -1)],
    };
  const suitable = options.filter((option) => option.suitable);
  if (suitable.length === 0)
    return { choice: 'wash', because: 'no-enemy', conditions: options[0]?.conditions ?? [], candidates };
  const enemies = suitable.map(({ candidate }) => candidate.plan.enemy);
  const { ways, between } = weighWays(season, fit, facts, enemies);
  const act = actOfChoice(season, between, facts.asOfMs);
  const washToday = isOver(ahead) && canWashToday(season, facts.asOfMs);
  const { choice, because, advised } = leastLoss(season, between, act, washToday);
  const washFirst = choice === 'buy' && act.kind === 'wash-then';
  const chosen = chosenOption(season, fit, facts, { usual: suitable, plan: act.plan!, washFirst });
  const others = candidates.filter(({ id }) => id !== chosen.candidate.id);
  const shown = [chosen.candidate, ...others];
  const told = { because, conditions: chosen.conditions, candidates: shown, ways, act, advised: advised.way };
  if (choice === 'wait') return { choice, ...told };
  const buy = wasReleasedThisSeason(season, chosen.candidate.plan.enemy, facts.asOfMs) ? 'top-up' : 'order';
  return {
    ...told,
    choice: choice === 'wash' ? 'wash' : buy,
    chosen,
    ...(washFirst ? { washFirst } : {}),
  };
}

/** Over the limit already in the week at hand. */
const isOver = (ahead: PestForecast): boolean => (ahead.weeks[0]?.count.q50 ?? 0) > ahead.counted.limit;

/**
 * `act` only if it is clearly better than leaving it, and no parcel later is clearly better still. Over the limit, where
 * one can wash today, a wash alone that clearly loses less goes first: the parcel can be ordered when the leaves were
 * looked at again.
 */
function leastLoss(
  { place }: Season,
  between: readonly Weighed[],
  act: Weighed,
  washToday: boolean,
): { choice: 'buy' | 'wash' | 'wait'; because: PestDecision['because']; advised: Weighed } {
  const [later, leave, wash] = (['later', 'leave', 'wash'] as const).map(
    (wanted) => between.find(({ kind }) => kind === wanted)!,
  ) as [Weighed, Weighed, Weighed];
  const isBest = (way: Weighed) => isClearGain(place, way, act) && isClearGain(place, way, leave);
  if (washToday && isBest(wash)) return { choice: 'wash', because: 'rule', advised: wash };
  if (isBest(later)) return { choice: 'wait', because: 'better-later', advised: later };
  if (!isClearGain(place, act, leave)) return { choice: 'wait', because: 'no-clear-gain', advised: leave };
  return { choice: 'buy', because: 'rule', advised: act };
}

/** The parcel with its forecast; at its usual size, and without a wash, that is made already. */
function chosenOption(
  season: Season,
  fit: Fit,
  facts: Facts,
  { usual, plan, washFirst }: { usual: readonly ReleaseOption[]; plan: ReleasePlan; washFirst: boolean },
): ReleaseOption {
  const made = usual.find(({ candidate }) => isSameParcel(candidate.plan, plan));
  return made && !washFirst ? made : releaseOption(season, fit, facts, plan, { washFirst });
}

const leaveOrWait = (because: SilentBecause): Choice =>
  because === 'no-recent-count' || because === 'too-few' || because === 'seen-once' ? 'wait' : 'leave';

function newestRelease(season: Season, hunters: readonly EnemyId[]): Release | undefined {
  return season.releases
    .filter((release) => hunters.includes(release.enemy))
    .sort((a, b) => Date.parse(b.time) - Date.parse(a.time))[0];
}

/** A top-up adds to enemies of the same kind; those of last year are gone. */
function wasReleasedThisSeason({ place, releases }: Season, enemy: EnemyId, asOfMs: number): boolean {
  const seasonOf = (timeMs: number) => endOfSeason(place, localDay(timeMs, place.timeZone));
  return releases.some((r) => r.enemy === enemy && seasonOf(Date.parse(r.time)) === seasonOf(asOfMs));
}

/** A week after the last count, today when that is past, or the first day back home after it. */
export function nextCountDay({ place }: Season, lastCountMs: number | undefined, asOfMs: number): string {
  const today = localDay(asOfMs, place.timeZone);
  if (lastCountMs === undefined) return firstDayHome(place, today);
  const due = addDays(localDay(lastCountMs, place.timeZone), 7);
  return firstDayHome(place, [today, due].sort().at(-1)!);
}
