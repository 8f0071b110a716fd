/** The sentence of the week, at most 30 words, its verb first (look and voice: docs/forecast.md, Words). */
import { format, parseISO } from 'date-fns';
import { formatDay, localDay } from '../climate/calendar.ts';
import type { Season } from '../season.ts';
import { speciesById } from '../species/catalogue.ts';
import { chancePhrase, isCountedOver, limitPhrase } from './chances.ts';
import { nextCountDay, type PestDecision } from './decide.ts';
import { capital, counted, verbFor } from './grammar.ts';
import { dueDay, parcelWords, soldAs } from './parcel.ts';
import { signsSeen } from './signsSeen.ts';
import { isWashedLately, washDay } from './washDay.ts';

export interface Sentence {
  verb: string;
  text: string;
}

/** What every sentence is made from. */
interface Case {
  season: Season;
  decision: PestDecision;
  /** Name of the pest. */
  pest: string;
  asOfMs: number;
  today: string;
}

export function sentenceFor(season: Season, decision: PestDecision, asOfMs: number): Sentence {
  const pest = speciesById(decision.pest).shortName;
  const own: Case = { season, decision, pest, asOfMs, today: localDay(asOfMs, season.place.timeZone) };
  switch (decision.choice) {
    case 'order':
    case 'top-up':
      return buy(own);
    case 'release':
      return setOut(own);
    case 'wash':
      return wash(own);
    case 'wait':
      return wait(own, nextCountDay(season, decision.evidence.lastCountMs, asOfMs));
    case 'leave':
      return leave(own);
  }
}

function buy(own: Case): Sentence {
  const { decision } = own;
  const plan = decision.chosen?.candidate.plan;
  if (!plan) throw new Error('a decision to buy needs a plan');
  const what = parcelWords(plan);
  // `hang them`, `put them out`
  const [verb, particle] = soldAs(plan.enemy).verb.split(' ');
  const them = what.startsWith('1 ') ? 'it' : 'them';
  const setThemOut = [verb, them, particle].filter(Boolean).join(' ');
  const by = `by ${formatDay(plan.orderBy ?? plan.windowFrom)}`;
  const start = decision.choice === 'top-up' ? `Top up with ${what} ${by}` : `Order ${what} ${by}`;
  const washed = decision.washFirst ? ', after a wash today' : '';
  const when = `and ${setThemOut} ${formatDay(plan.windowFrom)}`;
  return {
    verb: decision.choice === 'top-up' ? 'Top up' : 'Order',
    text: shortEnough([
      `${start} ${when}${washed}: ${passes(own)}${around(own)}.`,
      `${start} ${when}${washed}: ${passes(own)}.`,
      decision.washFirst
        ? `${start} and wash the plants today: ${passes(own)}.`
        : `${start}: ${passes(own)}.`,
    ]),
  };
}

function setOut({ decision, pest }: Case): Sentence {
  const { order, conditions } = decision;
  if (!order) throw new Error('a decision to release needs the parcel that came');
  const { shortName } = speciesById(order.enemy);
  const { verb, where } = soldAs(order.enemy);
  const isWarm = conditions.some((c) => c.rule === 'warmth' && c.verdict === 'holds');
  const text = `${capital(verb)} the ${shortName} today, ${where}, against ${pest}.`;
  return {
    verb: capital(verb),
    text: shortEnough([
      ...(isWarm ? [`${text} It is warm enough for them.`] : []),
      text,
      `${capital(verb)} the ${shortName} today.`,
    ]),
  };
}

function wash(own: Case): Sentence {
  const day = washDay(own.season, own.asOfMs);
  const when = isWashedLately(own.season, own.asOfMs)
    ? `once more on ${formatDay(day)}`
    : day === own.today
      ? 'today and again in five days'
      : `on ${formatDay(day)} and five days later`;
  const start = `Wash the plants ${when}: ${passes(own)}`;
  const why = whyWash(own);
  return {
    verb: 'Wash',
    text: shortEnough([`${start}${around(own)}, and ${why}.`, `${start}, and ${why}.`, `${start}.`]),
  };
}

/** Why no friend is sent instead: none in time, none sold, or the condition that stands against the best one. */
function whyWash({ decision: { because, chosen, conditions } }: Case): string {
  if (because === 'late-in-season') return 'the season ends before a release would pay';
  if (chosen) return `no friend can come before ${formatDay(chosen.candidate.plan.windowFrom)}`;
  switch (conditions.find((c) => c.verdict === 'fails')?.rule) {
    case 'warmth':
      return 'it is too cold for the friends that could help';
    case 'prey':
      return 'their young are still too small for friends to help';
    case 'day-length':
      return 'days are too short for the friends that could help';
    case 'egg-humidity':
      return 'the air is too dry for the friends that could help';
    case 'ants':
      return 'ants would drive friends away';
    default:
      return 'your supplier lists no friend against them';
  }
}

function wait(own: Case, countOn: string): Sentence {
  const { decision, pest, today } = own;
  const countDay = countOn === today ? 'today' : `on ${formatDay(countOn)}`;
  if (decision.because === 'parcel-ordered') return waitForParcel(own);
  if (decision.because === 'no-recent-count') return countToday(own);
  if (decision.because === 'parcel-held-back' && decision.order) {
    const { shortName } = speciesById(decision.order.enemy);
    const text = `Wait with the ${shortName}: residue of a spray would harm them; keep them cool and dark, and ask the supplier how long they last.`;
    return { verb: 'Wait', text };
  }
  const verb = 'Count again';
  if (decision.because === 'little-known')
    return { verb, text: `${verb} ${countDay}: too little is published about ${pest} to weigh a release.` };
  if (decision.because === 'unlikely') {
    const why = isPast(own)
      ? `${pest} ${chancePhrase(own.decision.ahead.passesLimit.probability, pest)} be over your limit again`
      : passes(own);
    const text = `${verb} ${countDay}: ${why}, so nothing need be bought yet.`;
    return { verb, text: shortEnough([text, `${verb} ${countDay}: ${passes(own)}.`]) };
  }
  if (decision.because === 'no-clear-gain' || decision.because === 'better-later') {
    const why =
      decision.because === 'better-later'
        ? 'friends set out later would spare more'
        : 'a parcel now would cost about as much as it spares';
    const start = `${verb} ${countDay}: ${why}`;
    return { verb, text: shortEnough([`${start}; ${passes(own)}.`, `${start}.`]) };
  }
  return { verb, text: `${verb} ${countDay}: ${tooFewToTell(decision, pest)}.` };
}

function waitForParcel({ season, decision: { order, washFirst }, pest, today }: Case): Sentence {
  if (!order) throw new Error('a decision to wait for a parcel needs its order');
  const due = dueDay(season.place, order);
  const { shortName } = speciesById(order.enemy);
  if (washFirst) {
    const comes = verbFor(shortName, 'comes', 'come');
    const text = `Wash the plants today, before the ${shortName} ${comes} on ${formatDay(due)}: that leaves fewer ${pest} to hold.`;
    return { verb: 'Wash', text };
  }
  const text =
    due < today
      ? `Wait for the ${shortName}, due since ${formatDay(due)}: ask the supplier where they are.`
      : `Wait for the ${shortName}, due ${formatDay(due)}; check them on arrival and set them out the same day.`;
  return { verb: 'Wait', text };
}

function countToday({ season, decision }: Case): Sentence {
  const { lastCountMs } = decision.evidence;
  const ago =
    lastCountMs === undefined
      ? 'nothing was counted yet'
      : `the last count was on ${formatDay(localDay(lastCountMs, season.place.timeZone))}`;
  return { verb: 'Count', text: `Count today: ${ago}, and one count narrows what is possible.` };
}

/** What was seen last, on a trap or else on leaves, and that it decides nothing. */
function tooFewToTell({ evidence }: PestDecision, pest: string): string {
  const { lastCatch = 0, onLeaves } = evidence;
  const growth = (number: number) =>
    `cannot tell yet whether ${Math.round(number) === 1 ? 'it grows' : 'they grow'}`;
  if (Math.round(lastCatch) > 0) return `${counted(lastCatch, pest)} on a trap ${growth(lastCatch)}`;
  if (Math.round(onLeaves) > 0) return `${counted(onLeaves, pest)} on leaves ${growth(onLeaves)}`;
  return `so few ${pest} cannot tell yet whether they grow`;
}

function leave(own: Case): Sentence {
  const { by } = own.decision.ahead.passesLimit;
  const before = isPast(own) ? '' : ` before ${dayAndMonth(by, own.season.place.timeZone)}`;
  const why = whyLeave(own);
  return {
    verb: 'Leave it',
    text: shortEnough([
      `Leave it: ${why === undefined ? '' : `${why}; `}${passes(own)}${before}.`,
      `Leave it: ${passes(own)}${before}.`,
    ]),
  };
}

function whyLeave({ decision: { because, evidence, pest, released } }: Case): string | undefined {
  if (because === 'season-over') return 'the season is over';
  if (because === 'outdoors') return 'outdoors, friends come by themselves';
  const { parasitised } = evidence;
  if (parasitised && isAtWork(parasitised)) return `friends are at work, ${signsSeen(pest, parasitised)}`;
  if (because === 'parcel-at-work' && released) {
    const { shortName } = speciesById(released.enemy);
    return `the ${shortName} ${verbFor(shortName, 'needs', 'need')} time to show`;
  }
  if (because === 'late-in-season') return 'the season ends before a release would pay';
  if (because === 'wasps-at-work') return 'small wasps are on the traps';
  return because === 'not-seen' ? 'none were seen' : undefined;
}

/** Fewer than 1 of 10 parasitised are a sign, but no work done. Judgement. */
const isAtWork = ({ signs, of }: { signs: number; of: number }): boolean => signs >= of / 10;

/** `whitefly will probably (8 of 10) pass your limit`, or is over it. */
const passes = ({ decision, pest }: Case): string =>
  limitPhrase(decision.ahead, pest, decision.evidence.lastCount);

const isPast = ({ decision: { ahead, evidence } }: Case): boolean =>
  isCountedOver(ahead.counted.limit, evidence.lastCount);

function around(own: Case): string {
  const middleDate = own.decision.ahead.passesLimit.when?.q50;
  return middleDate === undefined || isPast(own)
    ? ''
    : ` around ${dayAndMonth(middleDate, own.season.place.timeZone)}`;
}

const dayAndMonth = (time: string, timeZone: string): string =>
  format(parseISO(localDay(Date.parse(time), timeZone)), 'd MMMM');

/** The first variant of at most 30 words; variants run from full to short. */
const shortEnough = (variants: readonly string[]): string =>
  variants.find((text) => text.split(' ').length <= 30) ?? variants.at(-1) ?? '';
