/**
 * Following up releases: what to look for and when, whether they have settled, what follows, whether it worked and what
 * it cost, and what the season suggests for the next one. It judges what was done; what to do next is weighed in
 * decide.ts.
 */
import { localDay } from '../climate/calendar.ts';
import type { FollowUp, PestHeld, ReleaseFollowUp } from '../followUps.ts';
import type { Fit } from '../forecast.ts';
import type { Courses } from '../inference/courses.ts';
import type { PestForecast } from '../outcome.ts';
import type { EnemyId, PestId, Season } from '../season.ts';
import { speciesById } from '../species/catalogue.ts';
import { mostUrgent, type PestDecision } from './decide.ts';
import { currencyOf } from './delivery.ts';
import { countDaysOf } from './evidence.ts';
import type { Checked } from './followUp/checks.ts';
import { effectOf } from './followUp/effect.ts';
import { heldOf } from './followUp/held.ts';
import { nextOf } from './followUp/next.ts';
import { nextYear } from './followUp/nextYear.ts';
import { spanWords } from './followUp/spans.ts';
import { endOfSeason } from './growingSeason.ts';
import { costOfReleases } from './spending.ts';

/** Of hunters on a square metre: more are not told apart. */
const many = 100;

/** All of it; `decisions` are those of the same fit. */
export function followUp(
  season: Season,
  fit: Fit,
  { decisions, checks }: { decisions: readonly PestDecision[]; checks: readonly Checked[] },
  asOfMs: number,
): FollowUp {
  const costs = costOfReleases(season.place, season);
  const played = playedAgain(fit, checks);
  const releases = checks.map((check) => releaseFollowUp(check, { decisions, fit, played, costs }));
  const today = localDay(asOfMs, season.place.timeZone);
  const from = firstDay(season, today);
  const pests = fit.forecast.pests.map((ahead) => {
    const held = heldAgainst(season, ahead, { releases, played, from }, asOfMs);
    const seenOn = countDaysOf(season, ahead.pest, asOfMs, 'seen').filter((day) => day > from);
    return { ahead, seenOn, ...(held ? { held } : {}) };
  });
  const counted = season.place.pests.flatMap((pest) => countDaysOf(season, pest, asOfMs, 'counted'));
  const countDays = [...new Set(counted)].filter((day) => day > from).sort();
  return {
    releases,
    pests: pests.flatMap(({ held }) => held ?? []),
    nextYear: nextYear({ season, from, today, pests, releases, countDays }),
    currency: currencyOf(season.place),
  };
}

/** The day before this season: the last one of the season before. */
function firstDay({ place }: Season, today: string): string {
  const end = endOfSeason(place, today);
  return `${Number(end.slice(0, 4)) - 1}${end.slice(4)}`;
}

/** Courses with some releases left out; each is played once. */
function playedAgain(fit: Fit, checks: readonly Checked[]) {
  const known = new Map<string, Courses>();
  const without = (pest: PestId, ids: readonly string[]): Courses => {
    const key = [pest, ...[...ids].sort()].join(' ');
    const courses = known.get(key) ?? fit.without(pest, ids);
    known.set(key, courses);
    return courses;
  };
  const allAgainst = (pest: PestId) =>
    checks.filter(({ against }) => against.includes(pest)).map(({ release }) => release.id);
  return { without, allAgainst };
}

type Played = ReturnType<typeof playedAgain>;

function releaseFollowUp(
  check: Checked,
  {
    decisions,
    fit,
    played,
    costs,
  }: { decisions: readonly PestDecision[]; fit: Fit; played: Played; costs: ReadonlyMap<string, number> },
): ReleaseFollowUp {
  const { season, release, look, against, asOfMs, settlement, because } = check;
  const { id, enemy, number, time } = release;
  const day = (timeMs: number) => localDay(timeMs, season.place.timeZone);
  const releasedMs = Date.parse(time);
  const forecasts = fit.forecast.pests.filter(({ pest }) => against.includes(pest));
  const decision = mostUrgent(decisions.filter(({ pest }) => against.includes(pest)));
  if (!decision) throw new Error(`no decision about ${against.join(', ')}`);
  const money = costs.get(id);
  return {
    releaseId: id,
    enemy,
    number,
    on: day(releasedMs),
    against: [...against],
    look,
    settlement,
    evidence: [because, ...forecasts.slice(0, 1).flatMap((ahead) => byAllCounts(ahead, enemy))],
    next: nextOf(check, decision),
    effects: forecasts.map((ahead) => {
      const pair = { with: played.without(ahead.pest, []), without: played.without(ahead.pest, [id]) };
      const counts = countDaysOf(season, ahead.pest, asOfMs, 'counted');
      return effectOf(ahead, pair, {
        releasedMs,
        asOfMs,
        tooEarly: settlement === 'too-early',
        counted: counts.some((countDay) => countDay > day(releasedMs)),
      });
    }),
    ...(money === undefined ? {} : { money }),
  };
}

/** What all counts together say of those that hunt now. */
function byAllCounts({ enemies }: PestForecast, enemy: EnemyId): string[] {
  const density = enemies.find((each) => each.enemy === enemy)?.perM2[0]?.density;
  if (!density) return [];
  const { shortName } = speciesById(enemy);
  const number = density.q10 >= many ? `${many} or more` : spanWords(density);
  const hunting = density.q90 < 0.5 ? 'hardly any' : number;
  return [`By all counts together now hunting on a square metre: ${hunting} ${shortName}, in 8 of 10 cases.`];
}

function heldAgainst(
  season: Season,
  ahead: PestForecast,
  { releases, played, from }: { releases: readonly ReleaseFollowUp[]; played: Played; from: string },
  asOfMs: number,
): PestHeld | undefined {
  const { pest } = ahead;
  const bought = releases.filter(({ against }) => against.includes(pest));
  if (bought.length === 0) return undefined;
  const pair = { with: played.without(pest, []), without: played.without(pest, played.allAgainst(pest)) };
  const weeks = pair.with.ends.flatMap((end, i) =>
    Date.parse(end) <= asOfMs && localDay(Date.parse(end), season.place.timeZone) > from ? [i] : [],
  );
  return heldOf(season.place, ahead, { bought, pair, weeks });
}
