/** What the forecast does not know, each in one sentence. */
import { lastIssuedMs } from '../climate/outdoorDays.ts';
import { filledHoursBetween, type TemperatureCurve } from '../climate/temperatureCurve.ts';
import type { Shown } from '../observation/counts.ts';
import type { Doubt, PestForecast } from '../outcome.ts';
import type { Season } from '../season.ts';
import { pestTraits, speciesById } from '../species/catalogue.ts';
import { dayMs } from '../units.ts';

const fewCounts = (n: number, what: string): string =>
  n === 0 ? `No ${what}` : n === 1 ? `Only 1 ${what}` : `Only ${n} ${what}s`;
const days = (n: number): string => (n === 1 ? '1 day' : `${n} days`);

/** Doubts about the temperature: none measured, silent, much filled in, readings not believed. */
export function temperatureDoubts(
  curve: TemperatureCurve | undefined,
  lastReadingMs: number | undefined,
  asOfMs: number,
): Doubt[] {
  if (!curve) {
    const text =
      'No sensor yet, and no lowest and highest typed in: warmth is taken as usual for the time of year.';
    return [{ code: 'no-temperature', text }];
  }
  const doubts: Doubt[] = [];
  const silentDays = lastReadingMs === undefined ? 0 : Math.floor((asOfMs - lastReadingMs) / dayMs);
  if (silentDays >= 1) {
    const text = `No sensor has sent anything for ${days(silentDays)}. What came since is filled in.`;
    doubts.push({ code: 'sensor-silent', text });
  }
  const filled = Math.round(filledHoursBetween(curve, asOfMs - 14 * dayMs, asOfMs));
  if (filled > 24) {
    const text = `${filled} hours of the last two weeks were filled in, so dates may be some days off.`;
    doubts.push({ code: 'filled-stretch', text });
  }
  const doubted = curve.doubted.filter((reading) => reading.timeMs > asOfMs - 7 * dayMs).length;
  if (doubted > 0) {
    const [look, they] = doubted === 1 ? ['reading looks', 'it is'] : ['readings look', 'they are'];
    doubts.push({
      code: 'readings-doubted',
      text: `${doubted} temperature ${look} wrong in the last seven days: ${they} kept, but not used here. The page Sensors says why.`,
    });
  }
  return doubts;
}

/** A source this long silent was given up on purpose. */
const givenUpDays = 30;

/** A forecast of the air outdoors that has grown old. */
export function outdoorDoubts(season: Season, asOfMs: number): Doubt[] {
  const issuedMs = lastIssuedMs(season.outdoor, asOfMs);
  const oldDays = issuedMs === undefined ? 0 : Math.floor((asOfMs - issuedMs) / dayMs);
  if (oldDays < 1 || oldDays > givenUpDays) return [];
  const text = `The weather forecast is ${days(oldDays)} old, so warmth ahead is less sure.`;
  return [{ code: 'outdoor-forecast-old', text }];
}

/** Doubts about one pest: not counted, few counts, weeks missed, a surprise, not seen yet, not proved, few members. */
export function pestDoubts(shown: Shown, forecast: PestForecast, asOfMs: number): Doubt[] {
  const { shortName, notAdvised, proved } = speciesById(forecast.pest);
  const { unit } = forecast.counted;
  const telling = unit === 'trap-week' ? shown.traps : shown.leaves;
  const counts = [...shown.traps, ...shown.leaves];
  const say = (code: string, text: string): Doubt => ({ code: `${code}:${forecast.pest}`, text });
  if (counts.length === 0)
    return [say('no-counts', `Nothing counted yet: whether ${shortName} are here is a guess.`)];
  const doubts: Doubt[] = [];
  const sinceDays = Math.floor((asOfMs - Math.max(...counts.map((count) => count.timeMs))) / dayMs);
  if (sinceDays > 10)
    doubts.push(say('missed-weeks', `No count for ${days(sinceDays)}. One count narrows it.`));
  if (telling.length < 3) {
    const few = fewCounts(telling.length, unit === 'trap-week' ? 'trap count' : 'leaf check');
    doubts.push(say('few-counts', `${few} of ${shortName} so far: ranges are wide.`));
  }
  if ((forecast.lastCountSurprise ?? 1) < 0.05) {
    doubts.push(
      say(
        'surprise',
        `The last count of ${shortName} was far from what we expected. Look again, or mend it.`,
      ),
    );
  }
  const seen =
    shown.traps.some((trap) => trap.high > 0) ||
    shown.leaves.some((leaf) => (leaf.young?.high ?? leaf.infestedLeaves ?? 0) > 0);
  if (!seen) {
    const empty = unit === 'trap-week' ? 'Empty traps' : 'Clean leaves';
    doubts.push(
      say('not-seen', `No ${shortName} seen yet. ${empty} make them unlikely, never sure to be away.`),
    );
  }
  if (proved === undefined) doubts.push(say('not-proved', notProved(forecast, shortName)));
  if (notAdvised !== undefined)
    doubts.push(say('not-enough-published', `Of ${shortName} too little is known to advise: ${notAdvised}`));
  if (forecast.effectiveSampleSize < 30) {
    doubts.push(
      say('few-members', `The counts of ${shortName} fit few of the courses we tried: ranges are rough.`),
    );
  }
  return doubts;
}

function notProved({ pest, counted }: PestForecast, name: string): string {
  if (pestTraits(speciesById(pest)).winged && counted.unit === 'trap-week')
    return 'Traps show only winged aphids: this forecast has not proved itself yet, so look under leaves.';
  return `The forecast of ${name} has not proved itself yet: trust your own counts more.`;
}
