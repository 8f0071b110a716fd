/** What leaf checks say of the sign of a release. */
import { formatDay, localDay } from '../../climate/calendar.ts';
import type { Look } from '../../followUps.ts';
import { bandOf, middleOf } from '../../observation/counts.ts';
import type { EnemyId, LeafCheck, LeafKind, PestId, Release, Season } from '../../season.ts';
import { leafKindOf, seenAs } from '../../species/signs.ts';
import { signsSeen } from '../signsSeen.ts';
import { groupOf } from '../waitingTimes.ts';

/** A release of this season, what to look for after it, and the pests of the place that it hunts. */
export interface Followed {
  season: Season;
  release: Release;
  look: Look;
  against: readonly PestId[];
  asOfMs: number;
}

/** Kind under a leaf that a check can note; none for friends that only "Who is it?" names. */
export function leafSignOf(enemy: EnemyId, against: readonly PestId[]): LeafKind | undefined {
  if (enemy === 'adalia-bipunctata') return 'ladybird-larva';
  if (enemy === 'chrysoperla-carnea') return 'lacewing-larva';
  if (groupOf(enemy) === 'mite') return 'predatory-mite';
  // Eretmocerus turns scales yellow, which are hard to tell from living ones.
  if (groupOf(enemy) !== 'wasp' || enemy === 'eretmocerus-eremicus') return undefined;
  return against.flatMap((pest) => seenAs(pest).parasitised?.sign ?? [])[0];
}

/** `predatory mites` without where to look for them. */
export const signName = (look: Look): string => look.lookFor.replace(/ (under|among|in) the .*$/, '');

export interface Noted {
  day: string;
  leaves: number;
  /** Leaves with the sign, and counted signs and hosts where both were counted. */
  leavesWith: number;
  signs?: number;
  of?: number;
  /** Of wasps: hosts were looked for and none was there. */
  noHosts: boolean;
}

/** Leaf checks that noted the sign, be it as none, from a day on, oldest first. */
export function noted({ season, release, look, against }: Followed, fromDay: string): Noted[] {
  const sign = leafSignOf(release.enemy, against);
  if (sign === undefined) return [];
  const pest = against[0];
  const host = groupOf(release.enemy) === 'wasp' && pest ? leafKindOf(pest) : undefined;
  return season.leafChecks
    .map((check) => ({ check, day: localDay(Date.parse(check.time), season.place.timeZone) }))
    .filter(({ day }) => day >= fromDay && day <= (look.until ?? day))
    .sort((a, b) => a.day.localeCompare(b.day))
    .flatMap(({ check, day }) => notedOn(check, day, sign, host));
}

/** The last day on which leaves were looked at, be it for other things, from a day on. */
export function lastLookedAt({ season, look }: Followed, fromDay: string): string | undefined {
  return season.leafChecks
    .map(({ time }) => localDay(Date.parse(time), season.place.timeZone))
    .filter((day) => day >= fromDay && day <= (look.until ?? day))
    .sort()
    .at(-1);
}

function notedOn(check: LeafCheck, day: string, sign: LeafKind, host: LeafKind | undefined): Noted[] {
  const of = (kind: LeafKind | undefined) => check.seen.find((seen) => seen.kind === kind);
  const [signs, hosts] = [of(sign), of(host)];
  // An empty list says that nothing was there.
  if (!signs)
    return check.seen.length === 0
      ? [{ day, leaves: check.leaves, leavesWith: 0, noHosts: host !== undefined }]
      : [];
  const total = (seen: typeof signs) => (seen.total === undefined ? undefined : middleOf(bandOf(seen.total)));
  const signsCounted = total(signs);
  const hostsCounted = hosts && total(hosts);
  const counted =
    signsCounted !== undefined && hostsCounted !== undefined
      ? { signs: Math.round(signsCounted), of: Math.round(signsCounted + hostsCounted) }
      : {};
  return [
    {
      day,
      leaves: check.leaves,
      leavesWith: signs.infestedLeaves ?? Math.min(check.leaves, Math.ceil(signsCounted ?? 0)),
      ...counted,
      noHosts: hosts !== undefined && (hosts.infestedLeaves ?? hostsCounted) === 0,
    },
  ];
}

/** Of hosts where they were counted, else of leaves. */
export const shareOf = ({ leaves, leavesWith, signs, of }: Noted): number =>
  signs !== undefined && of ? signs / of : leavesWith / leaves;

/** `On Tue 26 May: 8 of 20 scales are black`. */
export function inWords(
  { look, against, release }: Followed,
  { day, leaves, leavesWith, signs, of }: Noted,
): string {
  const [pest] = against;
  const seen =
    signs !== undefined && of && pest && groupOf(release.enemy) === 'wasp'
      ? signsSeen(pest, { signs, of })
      : `${signName(look)} on ${leavesWith} of ${leaves} leaves`;
  return `On ${formatDay(day)}: ${seen}`;
}
