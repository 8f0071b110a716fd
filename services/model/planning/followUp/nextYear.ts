/** What the season suggests for the next one: a few plain lines, each with its evidence, none where that is thin. */
import { daysBetween, formatDay, localDay } from '../../climate/calendar.ts';
import type { Effect, ReleaseFollowUp, Suggestion } from '../../followUps.ts';
import { isCountedOnLeaves, type PestId } from '../../season.ts';
import { capital } from '../grammar.ts';
import { anotherFriend, countWeekly, lookInTime, onResidue } from './habits.ts';
import { spanWords } from './spans.ts';
import { nameOf, oldestFirst, type TellingPest, type Told } from './told.ts';

/** Fewer days of counting say too little about a season. Judgement. */
const daysThatTell = 6;
/** Of a pest over the limit "probably" so. */
const probably = 0.65;
/** An earlier parcel is never asked for by more. Judgement. */
const mostWeeksEarlier = 6;
const mostSuggestions = 4;

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

const weeksWords = (weeks: number): string => (weeks === 1 ? 'a week' : `${weeks} weeks`);

const seenEnough = (onLeavesAlone: boolean): string => (onLeavesAlone ? 'seen' : 'seen on two days');

/** The pest passed the limit before the first friends against it could show. */
function orderEarlier({ season, from, releases }: Told, { ahead, seenOn }: TellingPest): Suggestion[] {
  const dayOf = (time: string) => localDay(Date.parse(time), season.place.timeZone);
  const over = ahead.past.find(
    ({ end, probabilityOverLimit }) => dayOf(end) > from && probabilityOverLimit >= probably,
  );
  const first = oldestFirst(releases).find(({ against }) => against.includes(ahead.pest));
  // What the advice asks for before it weighs a parcel.
  const leaves = isCountedOnLeaves(season.place, ahead.pest);
  const known = seenOn[leaves ? 0 : 1];
  if (!over || !first || !known || dayOf(over.end) >= first.look.from) return [];
  const late = Math.ceil(daysBetween(dayOf(over.end), first.look.from) / 7);
  const possible = Math.floor(daysBetween(known, first.on) / 7);
  const weeks = Math.min(late, possible, mostWeeksEarlier);
  if (weeks < 1) return [];
  const name = nameOf(ahead.pest);
  return [
    {
      code: 'order-earlier',
      text: `Order against ${name} ${weeksWords(weeks)} earlier, once they are ${seenEnough(leaves)}.`,
      evidence: `${capital(name)} passed your limit in the week to ${formatDay(dayOf(over.end))}; the ${nameOf(first.enemy)} of ${formatDay(first.on)} could show from ${formatDay(first.look.from)} on. ${capital(seenEnough(leaves))} by ${formatDay(known)}.`,
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
function sameAgain({ season, releases }: Told, { ahead: { pest }, held }: TellingPest): Suggestion[] {
  const helped = oldestFirst(releases).filter(({ effects }) =>
    effects.some((effect) => effect.pest === pest && effect.verdict === 'helped'),
  );
  const [first] = helped;
  if (!first || !held || held.weeksHeld.with.q10 <= held.weeksHeld.without.q90) return [];
  return [
    {
      code: 'same-again',
      text: `The same again against ${nameOf(pest)}: ${nameOf(first.enemy)}, ${first.number}, once ${seenEnough(isCountedOnLeaves(season.place, pest))}.`,
      evidence: `Within your limit in ${spanWords(held.weeksHeld.with)} of ${held.weeks} weeks, without friends in ${spanWords(held.weeksHeld.without)}.`,
    },
  ];
}
