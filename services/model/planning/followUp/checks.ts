/** The settled checks of all releases of this season, and what the advice takes from them. */
import { daysBetween, formatDay, localDay } from '../../climate/calendar.ts';
import type { Forecast } from '../../outcome.ts';
import { huntersOf } from '../../population/world.ts';
import type { EnemyId, PestId, Release, Season } from '../../season.ts';
import { speciesById } from '../../species/catalogue.ts';
import { capital, verbFor } from '../grammar.ts';
import { endOfSeason } from '../growingSeason.ts';
import type { Followed } from './leafSigns.ts';
import { lookOf } from './look.ts';
import { lookNext } from './next.ts';
import { type Settled, settled } from './settled.ts';

/** A settled check older than this is no reason any more. Judgement. */
const isNewsDays = 42;

export interface Checked extends Followed, Settled {}

/** Every release of this season against a pest of the place, the newest first; cheap, as nothing is played again. */
export function settledChecks(season: Season, { ledger }: Forecast, asOfMs: number): Checked[] {
  return releasesOfSeason(season, asOfMs).flatMap((release) => {
    const against = season.place.pests.filter((pest) => hunts(release.enemy, pest));
    if (against.length === 0) return [];
    const followed = { season, release, against, asOfMs, look: lookOf(season.place, ledger, release) };
    return [{ ...followed, ...settled(followed) }];
  });
}

/** Whether the newest release against a pest that can be judged has settled, as a reason while that is news. */
export function settledReason(checks: readonly Checked[], pest: PestId): string[] {
  const news = checks.filter(
    ({ against, settlement, look, season, asOfMs }) =>
      against.includes(pest) &&
      settlement !== 'too-early' &&
      daysBetween(look.from, localDay(asOfMs, season.place.timeZone)) <= isNewsDays,
  );
  const newest = news.find(({ settlement }) => settlement !== 'cannot-say') ?? news[0];
  return newest ? [asReason(newest)] : [];
}

function asReason({ settlement, gone, because, release, season }: Checked): string {
  const { shortName } = speciesById(release.enemy);
  const have = verbFor(shortName, 'has', 'have');
  const them = `the ${shortName} of ${formatDay(localDay(Date.parse(release.time), season.place.timeZone))}`;
  if (settlement === 'cannot-say') return `Nobody can say whether ${them} ${have} settled. ${because}`;
  if (gone) return `${capital(them)} had settled, but none show now. ${because}`;
  return `${capital(them)} ${have} ${settlement === 'settled' ? '' : 'not '}settled. ${because}`;
}

/** Days to look that are still to come. */
export const daysToLook = (checks: readonly Checked[]): { day: string; verb: string; text: string }[] =>
  checks
    .filter(({ settlement }) => settlement === 'too-early')
    .map((check) => ({ day: lookNext(check), verb: 'Look', text: `for ${check.look.lookFor}` }));

const hunts = (enemy: EnemyId, pest: PestId): boolean => huntersOf(pest).some(({ id }) => id === enemy);

function releasesOfSeason({ place, releases }: Season, asOfMs: number): Release[] {
  const seasonOf = (timeMs: number) => endOfSeason(place, localDay(timeMs, place.timeZone));
  return releases
    .filter(({ time }) => Date.parse(time) <= asOfMs && seasonOf(Date.parse(time)) === seasonOf(asOfMs))
    .sort((a, b) => Date.parse(b.time) - Date.parse(a.time) || a.id.localeCompare(b.id));
}
