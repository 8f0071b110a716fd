/**
 * How good the forecasts were that the person was given: each round of counts against the forecast kept about a week
 * before it, and against what anybody could say, "as last time". Nothing is computed again afterwards.
 */
import { localDay } from '../climate/calendar.ts';
import type { Counts } from '../observation/counts.ts';
import type { Forecast, PestForecast, Quantiles } from '../outcome.ts';
import { endOfSeason } from '../planning/growingSeason.ts';
import type { PestId, Place } from '../season.ts';
import { dayMs } from '../units.ts';
import { longestHeldDays, observedRounds } from './observed.ts';

export interface HeldRound {
  pest: PestId;
  /** When it was counted. */
  time: string;
  /** One number a card (of seven days) or leaf check (leaves with any, of ten). */
  counts: number[];
  /** The ranges that were given for this week, and when; absent when none was kept about a week before. */
  said?: { asOf: string; count: Quantiles };
  /** The mean of the round before, when it lies within the same season. */
  last?: number;
}

/** A forecast speaks for a round when its first week ends within three days of it, as in a replay. */
const nearMs = 3 * dayMs;
const weekMs = 7 * dayMs;

export interface Kept {
  /** Instants of the forecasts that were kept, ascending. */
  times: readonly number[];
  at: (asOfMs: number) => Forecast | undefined;
}

/** The rounds of the season that `nowMs` lies in, by pest and time. */
export function heldRounds(season: Counts & { place: Place }, kept: Kept, nowMs: number): HeldRound[] {
  const { place } = season;
  const seasonOf = (ms: number) => endOfSeason(place, localDay(ms, place.timeZone));
  return place.pests.flatMap((pest) => {
    const rounds = observedRounds(season, pest, longestHeldDays).filter(
      ({ timeMs }) => seasonOf(timeMs) === seasonOf(nowMs),
    );
    return rounds.map(({ timeMs, counts }, i): HeldRound => {
      const before = rounds[i - 1]?.counts;
      const said = saidOf(kept, pest, timeMs);
      return {
        pest,
        time: new Date(timeMs).toISOString(),
        counts,
        ...(said && { said }),
        ...(before && { last: before.reduce((sum, count) => sum + count, 0) / before.length }),
      };
    });
  });
}

/**
 * The first forecast kept a week before the round or less, which knows the round before; else the last one kept
 * before that.
 */
function saidOf({ times, at }: Kept, pest: PestId, timeMs: number): HeldRound['said'] {
  const weekBefore = timeMs - weekMs;
  const asOfMs =
    times.find((each) => each >= weekBefore && each <= weekBefore + nearMs) ??
    times.findLast((each) => each < weekBefore && each >= weekBefore - nearMs);
  const forecast = asOfMs === undefined ? undefined : at(asOfMs);
  const week = forecast?.pests.find((each: PestForecast) => each.pest === pest)?.weeks[0];
  return forecast && week && { asOf: forecast.asOf, count: week.count };
}
