/** The one door to the model for everybody outside services/model. */
export { advise, adviseFrom, forecastAndAdvise } from './advise.ts';
export {
  addDays,
  atLocalHour,
  formatDay,
  isoWeekday,
  localDay,
  startOfLocalDay,
} from './climate/calendar.ts';
export { doubtWords, findDoubts } from './climate/doubts.ts';
export { type TemperatureCurve, temperatureCurve } from './climate/temperatureCurve.ts';
export { type Fit, type ForecastOptions, fit, forecast } from './forecast.ts';
export * from './outcome.ts';
export { coverage, randomisedPlace } from './scoring/coverage.ts';
export { crpsOfQuantiles, crpsOfSample } from './scoring/crps.ts';
export { type IntervalScore, intervalScore } from './scoring/intervalScore.ts';
export * from './season.ts';
export { speciesById } from './species/catalogue.ts';
export { type TemperatureUnit, toCelsius } from './units.ts';
