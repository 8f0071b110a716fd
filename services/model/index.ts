/** The one door to the model for everybody outside services/model. */
export { advise, adviseFrom, forecastAndAdvise } from './advise.ts';
export {
  addDays,
  atLocalHour,
  daysBetween,
  formatDay,
  isoWeekday,
  localDay,
  startOfLocalDay,
} from './climate/calendar.ts';
export { type CorrectionC, correctionsOf } from './climate/corrections.ts';
export { doubtWords, findDoubts } from './climate/doubts.ts';
export { knownPoints } from './climate/outdoorDays.ts';
export { type TemperatureCurve, temperatureCurve } from './climate/temperatureCurve.ts';
export * from './followUps.ts';
export { type Fit, type ForecastOptions, fit, forecast } from './forecast.ts';
export {
  kinds as keyKinds,
  noAnts,
  notKnown,
  type SightingWord,
  sightingWord,
  sightingWords,
} from './identification/catalogue.ts';
export { type CharacterId, characters, type Value } from './identification/characters.ts';
export { lookFor } from './identification/doubles.ts';
export {
  type KeyAnswer,
  type KeyOption,
  type KeyStep,
  keyStep,
  mostQuestions,
  notSure,
} from './identification/key.ts';
export type { Kind as KeyKind, Side } from './identification/kind.ts';
export { identificationSources } from './identification/sources.ts';
export { allTrapWindows, bandOf, middleOf, type TrapWindow } from './observation/counts.ts';
export * from './outcome.ts';
export { firstDayHome, lastDayHome } from './planning/awayDays.ts';
export { isCountedOver, limitPhrase } from './planning/chances.ts';
export { residueOver } from './planning/conditions/residue.ts';
export { currencyOf } from './planning/delivery.ts';
export { lastCount } from './planning/evidence.ts';
export { capital } from './planning/grammar.ts';
export { endOfSeason } from './planning/growingSeason.ts';
export { dueDay, openOrders, parcelWords, soldAs } from './planning/parcel.ts';
export { type SeasonBeside, seasonsCompared } from './planning/seasonsCompared.ts';
export { type Parcel, shoppingList } from './planning/shoppingList.ts';
export { priceHistory, spending } from './planning/spending.ts';
export { leftWay, type Trial, type Tried, tryRelease, usualParcels } from './planning/whatIf.ts';
export { coverage, randomisedPlace } from './scoring/coverage.ts';
export { crpsOfQuantiles, crpsOfSample } from './scoring/crps.ts';
export { type HeldRound, heldRounds } from './scoring/held.ts';
export { type IntervalScore, intervalScore, weightedIntervalScore } from './scoring/intervalScore.ts';
export { replay, type ScoredCount } from './scoring/replay.ts';
export { replayTotals } from './scoring/replayTotals.ts';
export { type LeadScore, type PestScore, scoresByPest } from './scoring/summary.ts';
export * from './season.ts';
export { enemyTraits, speciesById } from './species/catalogue.ts';
export { type TemperatureUnit, toCelsius } from './units.ts';
