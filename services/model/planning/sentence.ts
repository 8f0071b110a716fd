/** The sentence of the week, at most 30 words, its verb first (look and voice: docs/forecast.md, Words). */
import { format, parseISO } from 'date-fns';
import { formatDay, localDay } from '../climate/calendar.ts';
import type { Season } from '../season.ts';
import { enemyTraits, speciesById } from '../species/catalogue.ts';
import { pieces } from './candidates.ts';
import { chancePhrase, isPlural } from './chances.ts';
import { nextCountDay, type PestDecision } from './decide.ts';

export interface Sentence {
  verb: string;
  text: string;
}

const wordsIn = (text: string): number => text.split(/\s+/).filter(Boolean).length;

/** The first variant of at most 30 words; variants run from full to short. */
const shortEnough = (variants: readonly string[]): string =>
  variants.find((text) => wordsIn(text) <= 30) ?? variants.at(-1) ?? '';

export function sentenceFor(season: Season, decision: PestDecision, asOfMs: number): Sentence {
  const pest = speciesById(decision.pest).shortName;
  const countDay = formatDay(nextCountDay(season, decision.evidence.lastCountMs, asOfMs));
  switch (decision.choice) {
    case 'order':
    case 'top-up':
      return buy(season, decision, pest);
    case 'release':
      return setOut(decision, pest);
    case 'wash':
      return wash(season, decision, pest);
    case 'wait':
      return wait(season, decision, pest, countDay);
    case 'leave':
      return leave(season, decision, pest);
  }
}

function buy(season: Season, decision: PestDecision, pest: string): Sentence {
  const plan = decision.chosen?.candidate.plan;
  if (!plan) throw new Error('a decision to buy needs a plan');
  const record = speciesById(plan.enemy);
  const traits = enemyTraits(record);
  const what = `${pieces(plan.number, traits)} of ${record.shortName}`;
  const them = what.startsWith('1 ') ? 'it' : 'them';
  const verb = decision.choice === 'top-up' ? 'Top up' : 'Order';
  const object = decision.choice === 'top-up' ? `with ${what}` : what;
  const when = `by ${formatDay(plan.orderBy ?? plan.windowFrom)} and ${traits.release.verb} ${them} ${formatDay(plan.windowFrom)}`;
  const passes = `${pest} ${chancePhrase(decision.ahead.passesLimit.probability, pest)} pass your limit`;
  return {
    verb,
    text: shortEnough([
      `${verb} ${object} ${when}: ${passes}${around(season, decision)}.`,
      `${verb} ${object} ${when}: ${passes}.`,
      `${verb} ${object} by ${formatDay(plan.orderBy ?? plan.windowFrom)}: ${passes}.`,
    ]),
  };
}

function setOut(decision: PestDecision, pest: string): Sentence {
  const order = decision.order;
  if (!order) throw new Error('a decision to release needs the parcel that came');
  const record = speciesById(order.enemy);
  const { release } = enemyTraits(record);
  const verb = release.verb.charAt(0).toUpperCase() + release.verb.slice(1);
  const warmth = decision.conditions.find((c) => c.rule === 'warmth');
  return {
    verb,
    text: shortEnough([
      `${verb} the ${record.shortName} today, ${release.where}, against ${pest}. ${warmth?.verdict === 'holds' ? 'It is warm enough for them.' : ''}`.trim(),
      `${verb} the ${record.shortName} today, ${release.where}.`,
    ]),
  };
}

function wash(season: Season, decision: PestDecision, pest: string): Sentence {
  const plan = decision.chosen?.candidate.plan;
  const passes = `${pest} ${chancePhrase(decision.ahead.passesLimit.probability, pest)} pass your limit`;
  const why = plan
    ? `no friend can hold it before ${formatDay(plan.windowFrom)}`
    : 'it is too cold for the friends that could hold it';
  return {
    verb: 'Wash',
    text: shortEnough([
      `Wash the plants today and again in five days: ${passes}${around(season, decision)}, and ${why}.`,
      `Wash the plants today and again in five days: ${passes}, and ${why}.`,
      `Wash the plants today and again in five days: ${passes}.`,
    ]),
  };
}

function wait(season: Season, decision: PestDecision, pest: string, countDay: string): Sentence {
  const { evidence, order, because } = decision;
  if (because === 'parcel-ordered' && order) {
    const comes = order.expectedOn ? `due ${formatDay(order.expectedOn)}` : 'on its way';
    const { shortName } = speciesById(order.enemy);
    return {
      verb: 'Wait',
      text: `Wait for the ${shortName}, ${comes}; check them on arrival and set them out the same day.`,
    };
  }
  if (because === 'no-recent-count') {
    const ago =
      evidence.lastCountMs === undefined
        ? 'nothing was counted yet'
        : `the last count was on ${formatDay(localDay(evidence.lastCountMs, season.place.timeZone))}`;
    return { verb: 'Count', text: `Count today: ${ago}, and one count narrows what is possible.` };
  }
  const chance = `${pest} ${chancePhrase(decision.ahead.passesLimit.probability, pest)} pass your limit`;
  const caught = Math.round(evidence.lastCatch ?? 0);
  const plural = isPlural(pest) || caught !== 1;
  const seen =
    because === 'unlikely'
      ? chance
      : `${caught} ${pest} on a trap cannot tell yet whether ${plural ? 'they grow' : 'it grows'}`;
  return {
    verb: 'Count again',
    text: shortEnough([
      because === 'unlikely'
        ? `Count again on ${countDay}: ${seen}, so nothing need be bought yet.`
        : `Count again on ${countDay}: ${seen}.`,
      `Count again on ${countDay}.`,
    ]),
  };
}

function leave(season: Season, decision: PestDecision, pest: string): Sentence {
  const { probability, by } = decision.ahead.passesLimit;
  const before = format(parseISO(localDay(Date.parse(by), season.place.timeZone)), 'd MMMM');
  const passes = `${pest} ${chancePhrase(probability, pest)} pass your limit before ${before}`;
  return {
    verb: 'Leave it',
    text: shortEnough([`Leave it: ${whyLeave(season, decision)}${passes}.`, `Leave it: ${passes}.`]),
  };
}

function whyLeave(season: Season, { evidence, because }: PestDecision): string {
  const signs = evidence.parasitised;
  if (signs && signs.signs > 0)
    return `friends are at work, ${signs.signs} of ${signs.of} are black or mummies. `.replace('. ', '; ');
  const parcel = season.releases.at(-1);
  if (because === 'parcel-at-work' && parcel)
    return `the ${speciesById(parcel.enemy).shortName} need time to show; `;
  if (because === 'late-in-season') return 'the season ends before a release would pay; ';
  if (because === 'wasps-at-work') return 'small wasps are on the traps; ';
  if (because === 'not-seen') return 'none were seen; ';
  return '';
}

function around(season: Season, decision: PestDecision): string {
  const middleDate = decision.ahead.passesLimit.when?.q50;
  if (middleDate === undefined) return '';
  return ` around ${format(parseISO(localDay(Date.parse(middleDate), season.place.timeZone)), 'd MMMM')}`;
}
