/** Did it work: a pest with and without a release, in the same possible seasons. */
import type { Effect } from '../../followUps.ts';
import type { Courses } from '../../inference/courses.ts';
import type { PestForecast } from '../../outcome.ts';
import { speciesById } from '../../species/catalogue.ts';
import { chanceCount, chanceWord } from '../chances.ts';
import { type Pair, seasonsOf, spanOf, spanWords } from './spans.ts';

/** Chance that the forecast misleads, and it made no difference: more where it has not proved itself. Judgement. */
const doubt = { proved: 0.1, unproved: 0.3 };
/** Clearly fewer: at least a third. Judgement. */
const clearly = 2 / 3;
/** "Probably" and "very unlikely" in our words. */
const helpedFrom = 0.65;
const hardlyBelow = 0.1;
/** A count below this on average tells nothing: none may have been there anyway. As the trigger asks for. */
const enoughToTell = 1;

type Unit = PestForecast['counted']['unit'];

export interface Since {
  releasedMs: number;
  asOfMs: number;
  /** Until its young can show nothing is told. */
  tooEarly: boolean;
  /** Whether the pest was counted since. */
  counted: boolean;
}

/** One release against one pest, since it was set out. */
export function effectOf({ pest, counted }: PestForecast, pair: Pair, since: Since): Effect {
  const { past, ahead } = weeksSince(pair.with, since);
  const now = past.at(-1);
  const countNow = (courses: Courses) =>
    spanOf(courses.counts.map((season) => (now === undefined ? 0 : season[now]!)));
  const proved = speciesById(pest).proved !== undefined;
  const misleads = proved ? doubt.proved : doubt.unproved;
  const chanceClearlyFewer = (1 - misleads) * chanceOfFewer(pair, past);
  const canTellNone = proved && isEnough(pair.with, past);
  const told = {
    pest,
    verdict:
      now === undefined || since.tooEarly
        ? 'too-early'
        : verdictOf(chanceClearlyFewer, since.counted, canTellNone),
    chanceClearlyFewer,
    countNow: { with: countNow(pair.with), without: countNow(pair.without) },
    weeksSpared: {
      soFar: spanOf(spared(pair, counted.limit, past)),
      ahead: spanOf(spared(pair, counted.limit, ahead)),
    },
  } as const;
  return { ...told, text: inWords(told, counted.unit, since.counted) };
}

/** Weeks that end after the release, up to now and from now on. */
function weeksSince({ ends }: Courses, { releasedMs, asOfMs }: Since) {
  const weeks = ends.map((end, i) => ({ i, endMs: Date.parse(end) }));
  const since = weeks.filter(({ endMs }) => endMs > releasedMs);
  return {
    past: since.filter(({ endMs }) => endMs <= asOfMs).map(({ i }) => i),
    ahead: since.filter(({ endMs }) => endMs > asOfMs).map(({ i }) => i),
  };
}

function chanceOfFewer(pair: Pair, weeks: readonly number[]): number {
  const sum = (season: readonly number[]) => weeks.reduce((all, i) => all + season[i]!, 0);
  const seasons = seasonsOf(pair, 'numbers');
  return seasons.filter((own) => sum(own.with) < clearly * sum(own.without)).length / seasons.length;
}

function isEnough({ counts }: Courses, weeks: readonly number[]): boolean {
  const mean = (season: readonly number[]) => weeks.reduce((all, i) => all + season[i]!, 0) / weeks.length;
  return spanOf(counts.map(mean)).q50 >= enoughToTell;
}

/** No difference is claimed only where enough are counted and the forecast has proved itself. */
function verdictOf(chance: number, counted: boolean, canTellNone: boolean): Effect['verdict'] {
  if (!counted) return 'cannot-say';
  if (chance >= helpedFrom) return 'helped';
  return chance < hardlyBelow && canTellNone ? 'hardly' : 'cannot-say';
}

/** Weeks over the limit without, less those with, by possible season. */
function spared(pair: Pair, limit: number, weeks: readonly number[]): number[] {
  const over = (season: readonly number[]) => weeks.filter((i) => season[i]! > limit).length;
  return seasonsOf(pair, 'counts').map((own) => over(own.without) - over(own.with));
}

function headOf(verdict: Effect['verdict'], chance: number): string {
  if (verdict === 'helped') return `It ${chanceWord(chance)} helped`;
  return verdict === 'hardly' ? 'It has hardly made a difference' : 'It may or may not have helped';
}

const unitWords: Record<Unit, string> = {
  'trap-week': 'a trap and week',
  'ten-leaves': 'of ten leaves',
};

function inWords(
  { pest, verdict, chanceClearlyFewer, countNow }: Omit<Effect, 'text'>,
  unit: Unit,
  counted: boolean,
): string {
  const name = speciesById(pest).shortName;
  if (verdict === 'too-early') return `Too early to tell what it does to the ${name}.`;
  if (!counted) return `No count of ${name} since, so nobody can say whether it helped.`;
  const numbers = `Now ${spanWords(countNow.with)} ${unitWords[unit]}; without it ${spanWords(countNow.without)}.`;
  if (verdict === 'cannot-say' && chanceClearlyFewer < hardlyBelow)
    return `These counts of ${name} cannot tell whether it helped. ${numbers}`;
  const fewer = `at least a third fewer ${name} since then in ${chanceCount(chanceClearlyFewer)} possible seasons`;
  return `${headOf(verdict, chanceClearlyFewer)}: ${fewer}. ${numbers}`;
}
