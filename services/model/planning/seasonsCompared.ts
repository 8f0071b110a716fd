/** Season beside season: when each pest was first seen, what was counted, done and spent, and how the forecasts did. */
import { atLocalHour, localDay } from '../climate/calendar.ts';
import { sightingWord } from '../identification/catalogue.ts';
import { type HeldRound, heldRounds, type Kept } from '../scoring/held.ts';
import type { PestId, Season } from '../season.ts';
import { countDaysOf } from './evidence.ts';
import { endOfSeason } from './growingSeason.ts';
import { spending } from './spending.ts';

export interface PestOfSeason {
  pest: PestId;
  /** Local day of the first on a trap, under a leaf or among what was noted. */
  firstSeen?: string;
  /** The mean of each round in the unit of the forecast, in time. */
  rounds: number[];
  /** Counts that a kept forecast spoke of, and how many lay in its range for 8 of 10. */
  foretold: number;
  inside: number;
}

export interface SeasonBeside {
  seasonEnd: string;
  pests: PestOfSeason[];
  releases: number;
  treatments: number;
  spent: number;
  /** Orders and releases without a price: the sum is too small by them. */
  unpriced: number;
}

/** Every season in which anything was entered, the newest first. */
export function seasonsCompared(season: Season, kept: Kept, nowMs: number): SeasonBeside[] {
  const { place, trapCounts, leafChecks, sightings, treatments, releases, orders } = season;
  const endOf = (time: string) => endOfSeason(place, localDay(Date.parse(time), place.timeZone));
  const dated = [...trapCounts, ...leafChecks, ...sightings, ...treatments, ...releases];
  const times = [...dated.map(({ time }) => time), ...orders.map(({ orderedAt }) => orderedAt)];
  const ends = new Set(times.filter((time) => Date.parse(time) <= nowMs).map(endOf));
  return [...ends]
    .sort()
    .reverse()
    .map((seasonEnd) => {
      const withinMs = Math.min(nowMs, atLocalHour(seasonEnd, 12, place.timeZone));
      const rounds = heldRounds(season, kept, withinMs);
      const { total, unpriced } = spending(place, season, withinMs).thisSeason;
      return {
        seasonEnd,
        pests: place.pests.map((pest) =>
          pestOfSeason(
            season,
            { pest, seasonEnd, rounds: rounds.filter((round) => round.pest === pest) },
            nowMs,
          ),
        ),
        releases: releases.filter(({ time }) => endOf(time) === seasonEnd).length,
        treatments: treatments.filter(({ time }) => endOf(time) === seasonEnd).length,
        spent: total,
        unpriced,
      };
    });
}

interface Own {
  pest: PestId;
  seasonEnd: string;
  rounds: readonly HeldRound[];
}

function pestOfSeason(season: Season, { pest, seasonEnd, rounds }: Own, nowMs: number): PestOfSeason {
  const { place, sightings } = season;
  const noted = sightings
    .filter(({ what, time }) => sightingWord(what)?.species.includes(pest) && Date.parse(time) <= nowMs)
    .map(({ time }) => localDay(Date.parse(time), place.timeZone));
  const [firstSeen] = [...countDaysOf(season, pest, nowMs, 'seen'), ...noted]
    .filter((day) => endOfSeason(place, day) === seasonEnd)
    .sort();
  const foretold = rounds.flatMap(({ counts, said }) =>
    said ? counts.map((count) => ({ count, said })) : [],
  );
  const inside = foretold.filter(({ count, said }) => count >= said.count.q10 && count <= said.count.q90);
  return {
    pest,
    ...(firstSeen === undefined ? {} : { firstSeen }),
    rounds: rounds.map(({ counts }) => counts.reduce((sum, count) => sum + count, 0) / counts.length),
    foretold: foretold.length,
    inside: inside.length,
  };
}
