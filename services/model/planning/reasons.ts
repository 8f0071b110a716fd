/** The evidence in sentences: why, what would change it, what to mind. */
import { formatDay, localDay } from '../climate/calendar.ts';
import { friendsFail, friendsInDoubt } from '../inference/friendsInDoubt.ts';
import type { Candidate, Way } from '../outcome.ts';
import { type EnemyId, isCountedOnLeaves, type PestId, type Season } from '../season.ts';
import { enemyTraits, speciesById, visitorRecords } from '../species/catalogue.ts';
import { type ReleaseOption, weeksOver, weighable } from './candidates.ts';
import { chanceCount } from './chances.ts';
import { nextCountDay, type PestDecision } from './decide.ts';
import { currencyOf } from './delivery.ts';
import { catchesByDay, infestedByCheck } from './evidence.ts';
import { capital, counted } from './grammar.ts';
import { isSameParcel, parcelWords } from './parcel.ts';
import { signsSeen } from './signsSeen.ts';
import { rule } from './trigger.ts';
import { groupOf } from './waitingTimes.ts';

/** From this chance on the parcel alone may well not be enough: "may or may not" in our words. Judgement. */
const notEnough = 0.35;
const stillUncertain = (washFirst: boolean | undefined) =>
  washFirst
    ? 'It may still not be enough: count each week, and be ready to top up.'
    : 'The parcel alone may not be enough: count each week, and be ready to top up or to wash.';

/** `settled` says whether the newest release against the pest has, where that bears on the decision. */
export function reasonsFor(
  season: Season,
  decision: PestDecision,
  asOfMs: number,
  settled: readonly string[] = [],
): string[] {
  const pest = speciesById(decision.pest).shortName;
  const { evidence, ahead, chosen } = decision;
  const reasons = [catches(season, decision, asOfMs), ...settled];
  const wave = ahead.waves[0];
  // Of a pest that was never found the possible seasons agree on dates that nothing seen bears out.
  if (wave && evidence.everSeen) {
    const day = (instant: string) => formatDay(localDay(Date.parse(instant), season.place.timeZone));
    const [from, to] = [day(wave.adults.q10), day(wave.adults.q90)];
    const when = from === to ? `on ${from}` : `between ${from} and ${to}`;
    reasons.push(`The next adults of ${pest} come ${when} in 8 of 10 cases.`);
  }
  if (chosen) {
    reasons.push(
      `If left, ${chanceCount(ahead.passesLimit.probability)} possible seasons pass your limit; with ${inWords(chosen.candidate)}, ${chanceCount(chosen.candidate.passesLimit)}.`,
    );
    reasons.push(...weeksOverLimit(decision, chosen.candidate));
    if (
      decision.because === 'rule' &&
      decision.choice !== 'wash' &&
      chosen.candidate.passesLimit >= notEnough
    )
      reasons.push(stillUncertain(decision.washFirst));
    reasons.push(...costs(season, decision, asOfMs));
  } else if (decision.ways) {
    reasons.push(...costs(season, decision, asOfMs));
  } else if (evidence.parasitised && settled.length === 0) {
    reasons.push(`On the leaves, ${signsSeen(decision.pest, evidence.parasitised)}.`);
  }
  if (season.place.kind === 'outdoors') reasons.push(visitorsOf(decision.pest));
  const blocked = decision.conditions.find((c) => c.verdict === 'fails');
  if (blocked) reasons.push(blocked.text);
  return reasons;
}

const inWords = ({ label, plan, washFirst }: ReleaseOption['candidate']): string =>
  washFirst ? `a wash and then ${parcelWords(plan)}` : label;

/** The way of a kind: leaving it, or with the parcel that was weighed against that. */
function wayOf({ act, ways = [] }: PestDecision, wanted: 'leave' | 'now' | 'wash-then') {
  return ways.find(({ kind, plan }) => kind === wanted && (!plan || (act && isSameParcel(plan, act.plan!))))
    ?.way;
}

/** Of the rest of the season where every way was weighed over it, else of the weeks ahead; never of both. */
function weeksOverLimit(decision: PestDecision, chosen: Candidate): string[] {
  const { ahead } = decision;
  const [leave, act] = [wayOf(decision, 'leave'), wayOf(decision, chosen.washFirst ? 'wash-then' : 'now')];
  const all = leave && act ? [leave.weeksOver, act.weeksOver] : [ahead, chosen].map(weeksOver);
  const [left, over] = all.map(Math.round);
  if (left === over) return [];
  const span = leave && act ? 'weeks left this season' : `${ahead.weeks.length} weeks ahead`;
  return [`Of the ${span} about ${left} are over your limit if left, about ${over} with it.`];
}

/** Harm and money, left and with the parcel, and with a wash before it. */
function costs(season: Season, decision: PestDecision, asOfMs: number): string[] {
  const { pest, act } = decision;
  const [left, now, washed] = (['leave', 'now', 'wash-then'] as const).map((kind) => wayOf(decision, kind));
  if (!left || !now) return [];
  const sum = (money: number) => `${Math.round(money)} ${currencyOf(season.place)}`;
  // What is told of the harm, so that harm and money as told add up to the whole as told.
  const harmOf = ({ expectedLoss, money }: Way) => sum(Math.round(expectedLoss) - Math.round(money));
  const inDoubt = friendsInDoubt(season, pest, asOfMs).map((enemy) => speciesById(enemy).shortName);
  return [
    `Left, about ${harmOf(left)} of the crop may be lost; with ${now.label} about ${harmOf(now)}, for ${sum(now.money)}.`,
    ...(act?.kind === 'wash-then' && washed
      ? [
          `With a wash before it about ${harmOf(washed)}, for ${sum(washed.money)}: crop and money together ${sum(washed.expectedLoss)}, without the wash ${sum(now.expectedLoss)}.`,
        ]
      : []),
    ...(inDoubt.length > 0 ? [mayFail(inDoubt)] : []),
  ];
}

const mayFail = (friends: readonly string[]): string =>
  `That is reckoned as if in ${chanceCount(friendsFail)} cases the ${friends.join(' and ')} set out do nothing more, since how well they work in your house is not sure.`;

/** Outdoors: who comes by itself, and what to look for. */
function visitorsOf(pest: PestId): string {
  const hunting = visitorRecords.filter((record) =>
    enemyTraits(record).attacks.some(({ prey }) => prey === pest),
  );
  const names = (hunting.length > 0 ? hunting : visitorRecords).map(({ shortName }) => shortName);
  return `Look for ${names.slice(0, -1).join(', ')}${names.length > 1 ? ' and ' : ''}${names.at(-1)}: they come by themselves.`;
}

function catches(season: Season, { pest, evidence }: PestDecision, asOfMs: number): string {
  const name = speciesById(pest).shortName;
  if (isCountedOnLeaves(season.place, pest)) return infested(season, pest, name, asOfMs);
  const last = catchesByDay(season, pest, asOfMs).slice(-3);
  if (last.length === 0) {
    const seen = Math.round(evidence.onLeaves) > 0 ? counted(evidence.onLeaves, name) : `no ${name}`;
    return evidence.countedLately
      ? `No trap has been counted yet; on leaves you saw ${seen}.`
      : 'Neither traps nor leaves have been counted lately.';
  }
  const numbers = last.map(({ perTrapWeek }) => Math.round(perTrapWeek));
  const latest = `${counted(numbers.at(-1) ?? 0, name)} a trap and week`;
  if (numbers.length === 1) return `The last count was ${latest}.`;
  return `The last counts were ${numbers.slice(0, -1).join(', ')} then ${latest}.`;
}

/** Of a pest counted on leaves. */
function infested(season: Season, pest: PestId, name: string, asOfMs: number): string {
  const last = infestedByCheck(season, pest, asOfMs).slice(-3);
  const latest = last.at(-1);
  if (latest === undefined) return 'The leaves have not been looked under yet.';
  const earlier = last.slice(0, -1).map((look) => `${look.infested} of ${look.leaves}`);
  const now = `${latest.infested} of ${latest.leaves} leaves with ${name}`;
  if (earlier.length === 0) return `The last leaf check was ${now}.`;
  return `The last leaf checks were ${earlier.join(', ')} then ${now}.`;
}

export function whatWouldChange(season: Season, decision: PestDecision, asOfMs: number): string[] {
  switch (decision.because) {
    case 'season-over':
      return [
        'A later end of the season, in the settings, or the next season: then counts are weighed again.',
      ];
    case 'outdoors':
      return ['A release is weighed in a closed house or room only.'];
    case 'little-known':
      return ['Once more is published about this pest, a release is weighed.'];
    case 'parcel-ordered':
    case 'parcel-arrived':
    case 'parcel-held-back':
      return ['If the parcel comes late or hardly anything in it moves, tell the supplier the same day.'];
  }
  if (decision.choice === 'leave' || decision.choice === 'wait') return [whatWouldWeighIt(season, decision)];
  return whatWouldSpareIt(season, decision, asOfMs);
}

/** Of a decision to leave it or to wait: what is still missing before a parcel is weighed. */
function whatWouldWeighIt({ place }: Season, { pest, because }: PestDecision): string {
  const name = speciesById(pest).shortName;
  switch (because) {
    case 'unlikely':
      return 'If passing your limit becomes as likely as 4 of 10, a release is weighed.';
    case 'no-clear-gain':
      return 'If the counts go on rising, or a parcel gets cheaper, a release pays.';
    case 'better-later':
      return 'Once a parcel now would spare more than one later, it is advised.';
    case 'parcel-at-work':
      return `If they have not settled ${rule.daysSinceParcel} days after the release, a top-up is weighed.`;
    case 'wasps-at-work':
      return `If the traps show fewer than 3 small wasps to 10 ${name}, a release is weighed.`;
    case 'late-in-season':
      return `If the season ends later than your settings say, a release is weighed: it wants ${rule.daysLeft} days.`;
    default:
      return !isCountedOnLeaves(place, pest)
        ? `If the traps show ${counted(rule.catchPerTrapWeek, name)} or more a week, or the leaves ${rule.onLeaves}, on two days, a release is weighed.`
        : `If ${name} are on a leaf at the next check, a release is weighed.`;
  }
}

/** Enemies that would hunt this pest but stand without a price. */
function unpriced({ place }: Season, pest: PestId): string[] {
  const priced = Object.keys(place.supplier?.pricePerAnimal ?? {});
  if (priced.length === 0) return [];
  const names = weighable(place, pest)
    .filter(({ id }) => !priced.includes(id))
    .map(({ shortName }) => shortName);
  return names.length === 0
    ? []
    : [`No price is entered for ${names.join(', ')}: with one they would be weighed too.`];
}

/** Of a decision to buy or to wash. */
function whatWouldSpareIt(
  season: Season,
  { pest, evidence, choice, chosen }: PestDecision,
  asOfMs: number,
): string[] {
  const half = Math.floor((evidence.lastInfested?.leaves ?? evidence.lastCatch ?? 0) / 2);
  const fewer = half === 0 ? '0' : `${half} or fewer`;
  // The day to order by may come before the next count is due.
  const orderBy = chosen?.candidate.plan.orderBy;
  const early = orderBy !== undefined && orderBy < nextCountDay(season, evidence.lastCountMs, asOfMs);
  const before = early ? `before ${formatDay(orderBy)}` : undefined;
  const found = isCountedOnLeaves(season.place, pest)
    ? `If ${before ?? 'next time'} ${half === 0 ? 'none' : fewer} of ten leaves have any`
    : `If ${before ? `a count ${before}` : 'the next count'} is ${fewer}`;
  const changes = [`${found}, wait and count again.`];
  if (chosen && choice !== 'wash') {
    const { huntsAboveC } = enemyTraits(speciesById(chosen.candidate.plan.enemy));
    changes.push(`If the house stays under ${huntsAboveC} °C by day, set them out a week later.`);
    changes.push('If you sprayed anything this season, enter it first: residue harms them.');
  }
  if (season.place.supplier === undefined)
    changes.push('Enter your supplier’s days and prices: the dates here assume five days.');
  return [...changes, ...unpriced(season, pest)];
}

export function cautionsFor(decision: PestDecision): string[] {
  const enemy = decision.chosen?.candidate.plan.enemy ?? decision.order?.enemy;
  return [
    ...(enemy === undefined ? [] : releaseCautions(enemy)),
    'The label and the law where you live come first.',
    ...(decision.choice === 'wash' || decision.washFirst
      ? ['A wash also harms friends that are on the plants.', 'Keep water away from sockets and heaters.']
      : []),
  ];
}

function releaseCautions(enemy: EnemyId): string[] {
  const { shortName } = speciesById(enemy);
  const licence = `${capital(shortName)} may need a licence where you live: ask your supplier and your authority.`;
  if (groupOf(enemy) === 'wasp') return [licence, 'Small wasps do not sting people.'];
  if (groupOf(enemy) === 'mite')
    return [licence, 'Open tubes and sachets of mites at arm’s length; do not blow or breathe the dust.'];
  return [licence];
}
