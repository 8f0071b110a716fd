/** Whether a release has settled: from leaf checks first, then sightings and the small wasps on the traps. */
import { addDays, formatDay, localDay } from '../../climate/calendar.ts';
import type { Settlement } from '../../followUps.ts';
import { sightingWord } from '../../identification/catalogue.ts';
import { enemyTraits, speciesById } from '../../species/catalogue.ts';
import { trapCatches } from '../evidence.ts';
import { capital } from '../grammar.ts';
import { rule } from '../trigger.ts';
import { groupOf } from '../waitingTimes.ts';
import { type Followed, inWords, lastLookedAt, leafSignOf, noted, shareOf, signName } from './leafSigns.ts';
import { earliestSign, latest } from './look.ts';

/** On fewer of ten leaves, or of ten hosts, a sign tells nothing yet. Judgement, as `friends are at work`. */
const enough = 0.1;
/** None on fewer leaves than this tells nothing. Judgement. */
const leavesThatTell = 10;
/** Leaf checks of so many days say whether they are still there. Judgement. */
const stillDays = 28;
/** Fewer small wasps on the traps may be guests. Judgement. */
const waspsThatTell = 3;

export interface Settled {
  settlement: Settlement;
  /** The sentence that decided. */
  because: string;
  /** They had settled, and the leaf checks of the last weeks show none. */
  gone?: true;
}

export function settled(followed: Followed): Settled {
  const { look, season, asOfMs } = followed;
  const today = localDay(asOfMs, season.place.timeZone);
  const found = onLeaves(followed) ?? sighted(followed) ?? onTraps(followed);
  if (found) return stillThere(followed, found, today);
  if (today < look.from)
    return { settlement: 'too-early', because: `${show(followed)} from ${formatDay(look.from)} on.` };
  const none = lookedAndNone(followed);
  if (none) return none;
  if (today <= look.surelyBy)
    return { settlement: 'too-early', because: `${show(followed)} by ${formatDay(look.surelyBy)}.` };
  return { settlement: 'cannot-say', because: nobodyLooked(followed, today) };
}

const show = ({ look }: Followed): string => `${capital(look.lookFor)} are expected`;

/** The check that shows most, if it shows enough. */
function onLeaves(followed: Followed): string | undefined {
  const [best] = noted(followed, earliestSign(followed.look)).sort((a, b) => shareOf(b) - shareOf(a));
  if (!best || best.leavesWith === 0 || shareOf(best) < enough) return undefined;
  return `${inWords(followed, best)}${orOthers(followed)}.`;
}

/** Settled once; whether they still show. */
function stillThere(followed: Followed, found: string, today: string): Settled {
  const { look } = followed;
  const from = addDays(today, -stillDays);
  const lately = noted(followed, latest(from, look.surelyBy));
  const leaves = lately.reduce((sum, each) => sum + each.leaves, 0);
  // Without hosts wasps cannot show, and are not missed.
  const gone =
    leaves >= leavesThatTell &&
    lately.every(({ leavesWith }) => leavesWith === 0) &&
    !lately.every(({ noHosts }) => noHosts);
  return gone
    ? {
        settlement: 'settled',
        because: `${found} None on ${leaves} leaves since ${formatDay(lately[0]!.day)}.`,
        gone,
      }
    : { settlement: 'settled', because: found };
}

/** Others that leave the same sign. */
function orOthers({ season, release, against }: Followed): string {
  const sign = leafSignOf(release.enemy, against);
  const others = season.releases
    .filter(({ enemy }) => enemy !== release.enemy && leafSignOf(enemy, against) === sign)
    .map(({ enemy }) => speciesById(enemy).shortName);
  const named = [...new Set(others)];
  if (named.length > 0) return `, of these or of ${named.join(' or ')}`;
  return enemyTraits(speciesById(release.enemy)).alsoWild ? '; such wasps also come by themselves' : '';
}

function sighted({ season, release, look }: Followed): string | undefined {
  const { timeZone } = season.place;
  const seen = season.sightings
    .map(({ what, time }) => ({ word: sightingWord(what), day: localDay(Date.parse(time), timeZone) }))
    .filter(({ word, day }) => word?.species.includes(release.enemy) && day >= earliestSign(look))
    .sort((a, b) => a.day.localeCompare(b.day))
    .at(-1);
  return seen?.word && `You saw ${seen.word.what} on ${formatDay(seen.day)}.`;
}

function onTraps({ season, release, look, against, asOfMs }: Followed): string | undefined {
  if (groupOf(release.enemy) !== 'wasp') return undefined;
  for (const pest of against) {
    const since = trapCatches(season, pest, asOfMs).filter(
      ({ timeMs }) => localDay(timeMs, season.place.timeZone) > look.surelyBy,
    );
    const wasps = since.reduce((sum, each) => sum + each.wasps, 0);
    const caught = since.reduce((sum, each) => sum + each.number, 0);
    if (wasps >= waspsThatTell && wasps >= rule.waspsPerPest * caught)
      return `${Math.round(wasps)} small wasps to ${Math.round(caught)} ${speciesById(pest).shortName} on the traps since ${formatDay(look.surelyBy)}.`;
  }
  return undefined;
}

/** From the day on which it should surely show: none, or too few to tell. */
function lookedAndNone(followed: Followed): Settled | undefined {
  const { look } = followed;
  const looks = noted(followed, look.surelyBy);
  const last = looks.at(-1);
  if (!last) return undefined;
  const most = looks.reduce((a, b) => (shareOf(b) > shareOf(a) ? b : a));
  if (most.leavesWith > 0)
    return { settlement: 'cannot-say', because: `${inWords(followed, most)}, too few to tell.` };
  if (looks.every(({ noHosts }) => noHosts))
    return {
      settlement: 'cannot-say',
      because: `On ${formatDay(last.day)} there was nothing left to lay into, so nothing can show.`,
    };
  const leaves = looks.reduce((sum, each) => sum + each.leaves, 0);
  const none = `No ${signName(look)} on ${leaves} leaves since ${formatDay(look.surelyBy)}`;
  return leaves < leavesThatTell
    ? { settlement: 'cannot-say', because: `${none}, too few leaves to tell.` }
    : { settlement: 'not-settled', because: `${none}.` };
}

function nobodyLooked(followed: Followed, today: string): string {
  const { look, release, against } = followed;
  if (look.until && today > look.until)
    return `By now they have pupated, and nobody looked for ${signName(look)} before ${formatDay(look.until)}.`;
  const early = noted(followed, look.from).at(-1);
  const looked = lastLookedAt(followed, early ? addDays(early.day, 1) : look.from);
  const notCounted =
    looked && `leaves were looked at on ${formatDay(looked)}, but ${signName(look)} were not counted`;
  if (early)
    return `No ${signName(look)} on ${formatDay(early.day)}, but it was early; ${notCounted ?? 'nobody has looked since'}.`;
  if (!leafSignOf(release.enemy, against))
    return `No sighting of ${signName(look)} is noted since ${formatDay(look.from)}: “Who is it?” names them.`;
  return notCounted
    ? `${capital(notCounted)}.`
    : `Nobody has looked for ${signName(look)} since ${formatDay(look.from)}.`;
}
