/** What a weather service tells the grower: the air outdoors of the days past, and how it expects the next ten. */
import type { Season } from '../services/model/index.ts';
import type { Garden } from './garden.ts';
import { normal, stream } from './random.ts';

const hourMs = 3_600_000;
const stepHours = 3;
const forecastHours = 10 * 24;
/** Standard deviation at once, and by how much it grows a day: about as wrong as the season's mean in ten days. Judgement. */
const errorC = { first: 1, perDay: 0.25 };
/** Of the error from one hour to the next: whole days are too warm or too cold. */
const errorLasts = 0.97;

/** Air outdoors at this moment, as measured. */
export const measuredOutdoors = (garden: Garden): Season['outdoor'] =>
  isStep(garden, garden.timeMs)
    ? [{ time: new Date(garden.timeMs).toISOString(), temperatureC: outdoorC(garden, garden.timeMs) }]
    : [];

/** A forecast issued at this moment. */
export function forecastOutdoors(garden: Garden): Season['outdoor'] {
  const { seed, timeMs } = garden;
  const random = stream(seed, `outdoor forecast ${timeMs}`);
  const issuedAt = new Date(timeMs).toISOString();
  let deviate = normal(random, 0, 1);
  const points: Season['outdoor'] = [];
  for (let lead = 0; lead <= forecastHours; lead += 1) {
    if (lead > 0) {
      deviate = errorLasts * deviate + Math.sqrt(1 - errorLasts ** 2) * normal(random, 0, 1);
    }
    const atMs = timeMs + lead * hourMs;
    if (!isStep(garden, atMs)) continue;
    const sdC = errorC.first + (errorC.perDay * lead) / 24;
    const temperatureC = rounded(outdoorC(garden, atMs) + sdC * deviate);
    points.push({ time: new Date(atMs).toISOString(), temperatureC, issuedAt });
  }
  return points;
}

const isStep = ({ startMs }: Garden, timeMs: number) => (timeMs - startMs) % (stepHours * hourMs) === 0;

/** The weather is drawn to the end of the season; a forecast beyond it repeats the last hour. */
function outdoorC({ weather, startMs }: Garden, timeMs: number): number {
  const hour = Math.floor((timeMs - startMs) / hourMs);
  return rounded(weather[Math.min(hour, weather.length - 1)]!.outdoorC);
}

const rounded = (temperatureC: number) => Math.round(10 * temperatureC) / 10;
