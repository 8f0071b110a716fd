/**
 * Weather of an invented place: solar geometry, cloud and air temperature hour by hour. Anomalies
 * of temperature and cloud are first-order autoregressions, so fine and dull spells last for days.
 */
import { normal, type Random } from './random.ts';

export interface Climate {
  latitudeDeg: number;
  longitudeDeg: number;
  yearMeanC: number;
  /** Half the difference between the warmest and the coldest part of the year. */
  yearSwingC: number;
  warmestDayOfYear: number;
  /** Half the difference between afternoon and dawn under a clear sky. */
  daySwingC: number;
  /** Standard deviation of the spells around the season. */
  spellSdC: number;
  /** Mean cloud cover, 0 to 1. */
  cloudCover: number;
  /** Days after the start on which a spell of heat begins, its length, and how much warmer it is. */
  heatWaves?: readonly { afterDays: number; days: number; addC: number }[];
}

export interface WeatherHour {
  outdoorC: number;
  globalWm2: number;
  cloudCover: number;
}

const dayMs = 86_400_000;
const hourMs = 3_600_000;
const radians = Math.PI / 180;

/**
 * Sine of the sun's height. Declination and equation of time are the Fourier series of Spencer 1971,
 * Search 2(5):172; good to about 0.3 degrees of height.
 */
export function sineOfSolarHeight(where: { latitudeDeg: number; longitudeDeg: number }, timeMs: number) {
  const b = (2 * Math.PI * (dayOfYear(timeMs) - 1)) / 365;
  const declination =
    0.006918 -
    0.399912 * Math.cos(b) +
    0.070257 * Math.sin(b) -
    0.006758 * Math.cos(2 * b) +
    0.000907 * Math.sin(2 * b) -
    0.002697 * Math.cos(3 * b) +
    0.00148 * Math.sin(3 * b);
  const equationMinutes =
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(b) -
      0.032077 * Math.sin(b) -
      0.014615 * Math.cos(2 * b) -
      0.040849 * Math.sin(2 * b));
  const solarHours = ((timeMs % dayMs) / hourMs + where.longitudeDeg / 15 + equationMinutes / 60 + 24) % 24;
  const hourAngle = (solarHours - 12) * 15 * radians;
  const latitude = where.latitudeDeg * radians;
  return (
    Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle)
  );
}

/** Days since the start of the UTC year, 1 at its first midnight, with fraction. */
export function dayOfYear(timeMs: number): number {
  return 1 + (timeMs - Date.UTC(new Date(timeMs).getUTCFullYear(), 0, 1)) / dayMs;
}

/**
 * Radiation on the level in W/m2: clear sky after Haurwitz 1945, J Meteorol 2:154; dimmed by cloud
 * after Kasten & Czeplak 1980, Solar Energy 24:177, G = G0 (1 - 0.75 N^3.4).
 */
export function globalRadiation(sineOfHeight: number, cloudCover: number): number {
  if (sineOfHeight <= 0) return 0;
  return 1098 * sineOfHeight * Math.exp(-0.059 / sineOfHeight) * (1 - 0.75 * cloudCover ** 3.4);
}

/** Hours of weather from `startMs` on; `hours[i]` is the state at `startMs + i` hours. */
export function weather(climate: Climate, startMs: number, hours: number, random: Random): WeatherHour[] {
  const spell = autoregression(random, 0.985);
  const cloudiness = autoregression(random, 0.95);
  return Array.from({ length: hours }, (_, hour) => {
    const timeMs = startMs + hour * hourMs;
    const cloudCover = 1 / (1 + Math.exp(-(logit(climate.cloudCover) + 1.8 * cloudiness())));
    const solarHour = ((timeMs % dayMs) / hourMs + climate.longitudeDeg / 15 + 24) % 24;
    const season = Math.cos((2 * Math.PI * (dayOfYear(timeMs) - climate.warmestDayOfYear)) / 365);
    const daily = Math.cos((2 * Math.PI * (solarHour - 15)) / 24) * (1 - 0.7 * cloudCover);
    return {
      outdoorC:
        climate.yearMeanC +
        climate.yearSwingC * season +
        climate.daySwingC * daily +
        climate.spellSdC * spell() +
        heatWaveC(climate, hour),
      globalWm2: globalRadiation(sineOfSolarHeight(climate, timeMs), cloudCover),
      cloudCover,
    };
  });
}

/** Added by heat waves, which come and go within a day. */
function heatWaveC({ heatWaves = [] }: Climate, hour: number): number {
  return heatWaves.reduce((sum, { afterDays, days, addC }) => {
    const inside = Math.min(hour / 24 - afterDays, afterDays + days - hour / 24);
    return sum + addC * Math.max(0, Math.min(1, inside));
  }, 0);
}

/** Standard normal values with the given correlation from one to the next. */
function autoregression(random: Random, correlation: number): () => number {
  let value = normal(random, 0, 1);
  return () => {
    value = correlation * value + Math.sqrt(1 - correlation ** 2) * normal(random, 0, 1);
    return value;
  };
}

const logit = (share: number) => Math.log(share / (1 - share));
