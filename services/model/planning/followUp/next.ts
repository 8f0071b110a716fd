/** What follows from a settled check: look again, let them work, top up, or stop. The decision is weighed elsewhere. */
import { addDays, formatDay, localDay } from '../../climate/calendar.ts';
import type { ReleaseFollowUp } from '../../followUps.ts';
import { speciesById } from '../../species/catalogue.ts';
import { limitPhrase } from '../chances.ts';
import { nextCountDay, type PestDecision, worthSpending } from '../decide.ts';
import { rule } from '../trigger.ts';
import { type Followed, leafSignOf, signName } from './leafSigns.ts';
import type { Settled } from './settled.ts';

type Next = ReleaseFollowUp['next'];

/** Later a look tells little of one release. Judgement. */
const worthLookingDays = 42;

/** `decision` is that about the pest the release stands most against. */
export function nextOf(check: Followed & Settled, decision: PestDecision): Next {
  const today = localDay(check.asOfMs, check.season.place.timeZone);
  if (check.settlement === 'too-early') return lookOn(check, lookNext(check));
  if (check.settlement === 'cannot-say') return cannotSay(check, decision, today);
  return check.settlement === 'settled' && !check.gone ? afterSettled(decision) : afterNone(check, decision);
}

/** The day to look, of a release that cannot be judged yet. */
export function lookNext({ look, season, asOfMs }: Followed): string {
  const today = localDay(asOfMs, season.place.timeZone);
  return today < look.from ? look.from : look.surelyBy;
}

function lookOn({ look, release, against }: Followed, day: string): Next {
  const where = leafSignOf(release.enemy, against)
    ? `under ten leaves for ${signName(look)}`
    : `for ${look.lookFor}`;
  return { what: 'look', on: day, text: `Look ${where} on ${formatDay(day)}.` };
}

function cannotSay(followed: Followed, decision: PestDecision, today: string): Next {
  const { look, season, asOfMs } = followed;
  if (today > (look.until ?? addDays(look.surelyBy, worthLookingDays)))
    return { what: 'wait', text: 'The next counts tell whether they did their work.' };
  return lookOn(followed, nextCountDay(season, decision.evidence.lastCountMs, asOfMs));
}

const buys = ({ choice }: PestDecision): boolean => choice === 'order' || choice === 'top-up';
const comes = ({ because }: PestDecision): boolean =>
  because.startsWith('parcel-') && because !== 'parcel-at-work';
const pestOf = ({ pest }: PestDecision): string => speciesById(pest).shortName;

function afterSettled(decision: PestDecision): Next {
  const { ahead, evidence } = decision;
  const name = pestOf(decision);
  const passes = limitPhrase(ahead, name, evidence.lastCount);
  if (buys(decision)) return { what: 'top-up', text: `Top up all the same: ${passes}.` };
  if (comes(decision)) return { what: 'wait', text: 'The parcel already ordered adds to them.' };
  if (ahead.passesLimit.probability < worthSpending) return { what: 'stop', text: `Buy no more: ${passes}.` };
  return { what: 'wait', text: `Let them work and count each week: ${passes}.` };
}

/** They have not settled, or are gone: a top-up if the advice weighs one in, else why not. */
function afterNone({ release, season }: Followed, decision: PestDecision): Next {
  if (buys(decision)) return { what: 'top-up', text: 'Top up, as advised.' };
  if (comes(decision)) return { what: 'wait', text: 'The parcel already ordered is the top-up.' };
  if (decision.because === 'parcel-at-work' && decision.released) {
    const newest = localDay(Date.parse(decision.released.time), season.place.timeZone);
    const day = addDays(newest, rule.daysSinceParcel);
    const of = decision.released.id === release.id ? '' : ' after the newer parcel';
    return { what: 'wait', on: day, text: `A top-up is weighed from ${formatDay(day)} on${of}.` };
  }
  return { what: 'stop', text: `Buy no more for now: ${whyNoMore(decision)}.` };
}

function whyNoMore(decision: PestDecision): string {
  const name = pestOf(decision);
  switch (decision.because) {
    case 'season-over':
      return 'the season is over';
    case 'late-in-season':
      return 'the season ends before another parcel would pay';
    case 'not-seen':
    case 'too-few':
    case 'seen-once':
      return `too few ${name} are seen`;
    case 'no-recent-count':
      return 'count first';
    case 'no-clear-gain':
      return 'another parcel would cost about as much as it spares';
    case 'better-later':
      return 'a later parcel would spare more';
    case 'wasps-at-work':
      return 'small wasps are on the traps';
    case 'no-enemy':
      return 'none can be set out now';
    case 'outdoors':
      return 'outdoors friends come by themselves';
    case 'little-known':
      return `too little is published about ${name}`;
    default:
      return limitPhrase(decision.ahead, name, decision.evidence.lastCount);
  }
}
