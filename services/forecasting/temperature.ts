/** The temperature of a stretch of time as the forecast uses it, from no more readings than it takes. */
import { correctionsOf, type Season, type TemperatureCurve, temperatureCurve } from '../model/index.ts';
import type { Store, StoredReading } from '../store/store.ts';
import { readingOf, seasonWithout } from './season.ts';
import { type Stretch, stretches } from './stretches.ts';

const dayMs = 86_400_000;
const hourMs = 3_600_000;
/** Readings up to this far apart leave no gap. */
const longestLineMs = 2 * hourMs;
/** What is filled in leans on a week before and after it. */
const aroundMs = 14 * dayMs;
/** As fine as a figure of some days shows it; of a longer stretch nobody sees so much. */
const sampleMs = hourMs / 6;
const finelyMs = 31 * dayMs;
const always = { fromMs: Number.NEGATIVE_INFINITY, toMs: Number.POSITIVE_INFINITY };

/** Who leads is told by all hours of the place; where something is filled in, the weeks before are looked at too. */
export async function temperatureOf(
  store: Store,
  placeId: string,
  stretch: Stretch,
): Promise<TemperatureCurve | undefined> {
  const season = seasonWithout(store, placeId);
  const standings = await standingsOf(store, season);
  const everyMs = stretch.toMs - stretch.fromMs > finelyMs ? hourMs : sampleMs;
  const curveFrom = async (fromMs: number) => {
    const stored = await sampled(store, placeId, { ...stretch, fromMs }, everyMs);
    return temperatureCurve({ ...season, readings: stored.map(readingOf) }, stretch.toMs, standings);
  };
  const curve = await curveFrom(stretch.fromMs);
  return curve && isMeasured(curve, stretch) ? curve : curveFrom(stretch.fromMs - aroundMs);
}

const isMeasured = ({ timesMs, filled }: TemperatureCurve, { fromMs }: Stretch) =>
  filled.length === 0 && timesMs[0]! - fromMs <= longestLineMs;

/** Of all hours of the place, corrected as the readings are. */
async function standingsOf({ readings }: Store, { place, sensors }: Season) {
  const correctionC = correctionsOf(sensors, place.timeZone);
  const isCorrected = new Set(sensors.filter((each) => each.corrections?.length).map(({ id }) => id));
  const standings = await readings.standings(place.id);
  return Promise.all(
    standings.map(async (standing) => {
      const { sensorId } = standing;
      if (!isCorrected.has(sensorId)) return standing;
      const hours = await readings.hourly(place.id, { ...always, sensorId });
      const addedC = hours.reduce((sum, hour) => sum + correctionC(sensorId, hour.hourMs), 0);
      return { ...standing, meanC: standing.meanC + addedC / Math.max(1, hours.length) };
    }),
  );
}

async function sampled({ readings }: Store, placeId: string, stretch: Stretch, everyMs: number) {
  const all: StoredReading[] = [];
  const read = (part: Stretch) => readings.sampled(placeId, part, everyMs);
  for await (const some of stretches(readings, placeId, stretch, read)) {
    for (const reading of some) all.push(reading);
  }
  return all;
}
