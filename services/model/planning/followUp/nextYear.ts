/** What the season suggests for the next one: a few plain lines, each with its evidence, none where that is thin. */
import { daysBetween, formatDay, localDay } from '../../climate/calendar.ts';
import type { Effect, PestHeld, ReleaseFollowUp, Suggestion } from '../../followUps.ts';
import type { PestForecast } from '../../outcome.ts';
import type { EnemyId, PestId, Season, Treatment } from '../../season.ts';
import { speciesById } from '../../species/catalogue.ts';
import { residueOver } from '../conditions/residue.ts';
import { capital, verbFor } from '../grammar.ts';
import { spanWords } from './spans.ts';

/** Fewer days of counting say too little about a season. Judgement. */
const daysThatTell = 6;
/** Of a pest over the limit "probably" so. */
const probably = 0.65;
/** An earlier parcel is never asked for by more. Judgement. */
const mostWeeksEarlier = 6;
/** Longer without a count is a gap. Judgement. */
const gapDays = 14;
const mostSuggestions = 4;

export interface Told {
  season: Season;
  /** First and last day of this season that are known. */
  from: string;
  today: string;
  pests: readonly TellingPest[];
  releases: readonly ReleaseFollowUp[];
  /** Local days of this season on which anything was counted, in time. */
  countDays: readonly string[];
}

export interface TellingPest {
  ahead: PestForecast;
  /** Local days of this season on which it was seen, in time. */
  seenOn: readonly string[];
  held?: PestHeld;
}

export function nextYear(told: Told): Suggestion[] {
  if (told.countDays.length < daysThatTell) return [];
  const earlier = told.pests.map((pest) => orderEarlier(told, pest));
  const all = [
    ...onResidue(told),
    ...earlier.flat(),
    ...anotherFriend(told),
    ...lookInTime(told),
    ...told.pests.flatMap((pest, i) =>
      earlier[i]!.length > 0 ? [] : [...notNeeded(told, pest), ...sameAgain(told, pest)],
    ),
    ...countWeekly(told),
  ];
  return all.slice(0, mostSuggestions);
}

const nameOf = (id: PestId | EnemyId): string => speciesById(id).shortName;
const oldestFirst = (releases: readonly ReleaseFollowUp[]) =>
  [...releases].sort((a, b) => a.on.localeCompare(b.on));
const weeksWords = (weeks: number): string => (weeks === 1 ? 'a week' : `${weeks} weeks`);

/** The pest passed the limit before the first friends against it could show. */
function orderEarlier({ season, from, releases }: Told, { ahead, seenOn }: TellingPest): Suggestion[] {
  const dayOf = (time: string) => localDay(Date.parse(time), season.place.timeZone);
  const over = ahead.past.find(
    ({ end, probabilityOverLimit }) => dayOf(end) > from && probabilityOverLimit >= probably,
  );
  const first = oldestFirst(releases).find(({ against }) => against.includes(ahead.pest));
  // Seen on two days is what the advice asks for before it weighs a parcel.
  const known = seenOn[1];
  if (!over || !first || !known || dayOf(over.end) >= first.look.from) return [];
  const late = Math.ceil(daysBetween(dayOf(over.end), first.look.from) / 7);
  const possible = Math.floor(daysBetween(known, first.on) / 7);
  const weeks = Math.min(late, possible, mostWeeksEarlier);
  if (weeks < 1) return [];
  const name = nameOf(ahead.pest);
  return [
    {
      code: 'order-earlier',
      text: `Order against ${name} ${weeksWords(weeks)} earlier, once they are seen on two days.`,
      evidence: `${capital(name)} passed your limit in the week to ${formatDay(dayOf(over.end))}; the ${nameOf(first.enemy)} of ${formatDay(first.on)} could show from ${formatDay(first.look.from)} on. Seen on two days by ${formatDay(known)}.`,
    },
  ];
}

/** Friends set out while a spray could still harm them. */
function onResidue({ season, releases }: Told): Suggestion[] {
  const harmed = oldestFirst(releases).flatMap(({ releaseId, enemy, on }) => {
    const release = season.releases.find(({ id }) => id === releaseId);
    const end = release && residueOver(season, enemy, Date.parse(release.time));
    const spray = end && end.day > on ? season.treatments.find(({ id }) => id === end.id) : undefined;
    return spray && end ? [{ spray, enemy, on, until: end.day }] : [];
  });
  const [first] = harmed;
  if (!first) return [];
  const sprayed = localDay(Date.parse(first.spray.time), season.place.timeZone);
  return [
    {
      code: 'spray-before',
      text: `Keep ${daysBetween(sprayed, first.until)} days between ${sprayNames[first.spray.kind]} and setting ${nameOf(first.enemy)} out.`,
      evidence: `${capital(sprayNames[first.spray.kind])} on ${formatDay(sprayed)}, ${nameOf(first.enemy)} on ${formatDay(first.on)}.`,
    },
  ];
}

const sprayNames: Record<Treatment['kind'], string> = {
  'water-jet': 'a water jet',
  soap: 'soap',
  oil: 'oil',
  neem: 'neem',
  pyrethrins: 'pyrethrins',
  sulphur: 'sulphur',
  'other-spray': 'another spray',
};

/** The same friend did not settle again and again. */
function anotherFriend({ releases }: Told): Suggestion[] {
  return [...new Set(releases.map(({ enemy }) => enemy))].flatMap((enemy) => {
    const own = releases.filter((release) => release.enemy === enemy);
    const none = own.filter(({ settlement }) => settlement === 'not-settled');
    if (none.length < 2 || own.some(({ settlement }) => settlement === 'settled')) return [];
    const name = nameOf(enemy);
    return [
      {
        code: 'another-friend',
        text: `Try another friend than ${name}, or set ${verbFor(name, 'it', 'them')} out in a warmer week.`,
        evidence: `${none.length} of ${own.length} releases of ${name} did not settle: ${none.map(({ on }) => formatDay(on)).join(', ')}.`,
      },
    ];
  });
}

/** Nobody looked when it would have told. */
function lookInTime({ releases, today }: Told): Suggestion[] {
  const over = releases.filter(({ look }) => look.surelyBy < today);
  const untold = oldestFirst(over).filter(({ settlement }) => settlement === 'cannot-say');
  const [first] = untold;
  if (!first) return [];
  const days = daysBetween(first.on, first.look.from);
  return [
    {
      code: 'look-in-time',
      text: `Look for ${first.look.lookFor} about ${days} days after setting ${nameOf(first.enemy)} out.`,
      evidence: `${untold.length} of ${over.length} set out cannot be judged. ${first.evidence[0] ?? ''}`,
    },
  ];
}

const effectsOn = (releases: readonly ReleaseFollowUp[], pest: PestId): Effect[] =>
  releases.flatMap(({ effects }) => effects.filter((effect) => effect.pest === pest));

/** Within the limit all along, with or without friends. */
function notNeeded({ releases }: Told, { ahead: { pest }, held }: TellingPest): Suggestion[] {
  const effects = effectsOn(releases, pest);
  const told = effects.length > 0 && effects.every(({ verdict }) => verdict === 'hardly');
  if (!held || !told || held.weeks < daysThatTell || held.weeksHeld.without.q10 < held.weeks) return [];
  return [
    {
      code: 'not-needed',
      text: `Wait longer before ordering against ${nameOf(pest)}.`,
      evidence: `Without friends too ${nameOf(pest)} would have been within your limit in all ${held.weeks} weeks.`,
    },
  ];
}

/** It helped, and won weeks. */
function sameAgain({ releases }: Told, { ahead: { pest }, held }: TellingPest): Suggestion[] {
  const helped = oldestFirst(releases).filter(({ effects }) =>
    effects.some((effect) => effect.pest === pest && effect.verdict === 'helped'),
  );
  const [first] = helped;
  if (!first || !held || held.weeksHeld.with.q10 <= held.weeksHeld.without.q90) return [];
  return [
    {
      code: 'same-again',
      text: `The same again against ${nameOf(pest)}: ${nameOf(first.enemy)}, ${first.number}, once seen on two days.`,
      evidence: `Within your limit in ${spanWords(held.weeksHeld.with)} of ${held.weeks} weeks, without friends in ${spanWords(held.weeksHeld.without)}.`,
    },
  ];
}

/** Weeks without a count. */
function countWeekly({ countDays }: Told): Suggestion[] {
  const gaps = countDays.slice(1).flatMap((day, i) => {
    const before = countDays[i]!;
    return daysBetween(before, day) > gapDays ? [{ before, day, days: daysBetween(before, day) }] : [];
  });
  const longest = gaps.reduce<(typeof gaps)[number] | undefined>(
    (a, b) => (a && a.days >= b.days ? a : b),
    undefined,
  );
  if (!longest) return [];
  return [
    {
      code: 'count-weekly',
      text: 'Count every week: a wave can come and go in three.',
      evidence: `Nothing was counted between ${formatDay(longest.before)} and ${formatDay(longest.day)}.`,
    },
  ];
}
