/** advise(season, asOf, options) -> Advice: one decision with its evidence (design: docs/forecast.md, Advice). */
import { localDay } from './climate/calendar.ts';
import { type Fit, type ForecastOptions, fit as fitSeason } from './forecast.ts';
import { upTo } from './inference/seasonPath.ts';
import type { Advice, Doubt, Forecast } from './outcome.ts';
import { daysToKeep } from './planning/daysToKeep.ts';
import { decide, mostUrgent, nextCountDay, type PestDecision } from './planning/decide.ts';
import { type Checked, daysToLook, settledChecks, settledReason } from './planning/followUp/checks.ts';
import { followUp } from './planning/followUp.ts';
import { cautionsFor, reasonsFor, whatWouldChange } from './planning/reasons.ts';
import { sentenceFor } from './planning/sentence.ts';
import type { Season } from './season.ts';

/** Advice from a fitted season; `asOf` is the instant of the fit. */
export function adviseFrom(season: Season, fitted: Fit, asOf: string): Advice {
  const asOfMs = Date.parse(asOf);
  const known = upTo(season, asOfMs);
  const decisions = fitted.forecast.pests.map((ahead) => decide(known, fitted, ahead, asOfMs));
  const decision = mostUrgent(decisions);
  if (!decision) return nothingToFollow(known, fitted, asOf);
  const checks = settledChecks(known, fitted.forecast, asOfMs);
  return {
    ...adviceFor(known, fitted, { decision, checks }, asOf),
    toOrder: decisions.flatMap(parcelsOf),
    ...(checks.length > 0 ? { followUp: followUp(known, fitted, { decisions, checks }, asOfMs) } : {}),
  };
}

/** Fits the season and advises; see `forecastAndAdvise` when both are wanted. */
export function advise(season: Season, asOf: string, options: ForecastOptions = {}): Advice {
  return adviseFrom(season, fitSeason(season, asOf, options), asOf);
}

/** Forecast and advice from one fit, so that both speak of the same possible seasons. */
export function forecastAndAdvise(
  season: Season,
  asOf: string,
  options: ForecastOptions = {},
): { forecast: Forecast; advice: Advice } {
  const fitted = fitSeason(season, asOf, options);
  return { forecast: fitted.forecast, advice: adviseFrom(season, fitted, asOf) };
}

function adviceFor(
  season: Season,
  fitted: Fit,
  { decision, checks }: { decision: PestDecision; checks: readonly Checked[] },
  asOf: string,
): Advice {
  const asOfMs = Date.parse(asOf);
  const { text, verb } = sentenceFor(season, decision, asOfMs);
  const { passesLimit } = decision.ahead;
  const chosen = decision.chosen?.candidate;
  return {
    placeId: season.place.id,
    asOf,
    decision: decision.choice,
    sentence: text,
    verb,
    pest: decision.pest,
    chanceIfLeft: passesLimit.probability,
    ...(chosen ? { chanceWithPlan: chosen.passesLimit, plan: chosen.plan } : {}),
    ...(decision.washFirst ? { washFirst: true } : {}),
    passesLimitBy: localDay(Date.parse(passesLimit.by), season.place.timeZone),
    conditions: decision.conditions,
    reasons: reasonsFor(season, decision, asOfMs, settledReason(checks, decision.pest)),
    wouldChange: whatWouldChange(season, decision, asOfMs),
    candidates: decision.candidates,
    ...(decision.ways ? { ways: decision.ways.map(({ way }) => way) } : {}),
    ...(decision.advised ? { wayAdvised: decision.advised.id } : {}),
    daysToKeep: daysToKeep(season, decision, asOfMs, daysToLook(checks)),
    nextCountOn: nextCountDay(season, decision.evidence.lastCountMs, asOfMs),
    doubts: [...fitted.forecast.doubts, ...supplierDoubt(season, decision)],
    cautions: cautionsFor(decision),
  };
}

/** What one decision buys. */
const parcelsOf = ({ pest, choice, chosen, washFirst }: PestDecision) =>
  chosen && (choice === 'order' || choice === 'top-up')
    ? [{ pest, ...chosen.candidate.plan, ...(washFirst ? { washFirst } : {}) }]
    : [];

function supplierDoubt(season: Season, { choice }: PestDecision): Doubt[] {
  if (season.place.supplier !== undefined || (choice !== 'order' && choice !== 'top-up')) return [];
  return [
    {
      code: 'supplier-unknown',
      text: 'Your supplier’s days are not entered: the dates assume five days and Tuesday to Friday.',
    },
  ];
}

function nothingToFollow(season: Season, fitted: Fit, asOf: string): Advice {
  const today = localDay(Date.parse(asOf), season.place.timeZone);
  return {
    placeId: season.place.id,
    asOf,
    decision: 'wait',
    sentence: 'Choose which pests to follow: then the traps can be read.',
    verb: 'Choose',
    conditions: [],
    reasons: [],
    wouldChange: [],
    candidates: [],
    daysToKeep: [],
    nextCountOn: today,
    doubts: fitted.forecast.doubts,
    cautions: ['The label and the law where you live come first.'],
  };
}
