/** Daily courses of temperature between a lowest and a highest, by hour of the day (solar time, 0 to 24). */

export interface DiurnalDay {
  minC: number;
  maxC: number;
  sunriseHour: number;
  sunsetHour: number;
}

/** Campbell & Norman 1998, An Introduction to Environmental Biophysics, equation 2.2: two harmonics, lowest at about 5. */
export function campbellNormanC({ minC, maxC }: { minC: number; maxC: number }, hour: number): number {
  const angle = (Math.PI / 12) * hour;
  const share = 0.44 - 0.46 * Math.sin(0.9 + angle) + 0.11 * Math.sin(0.9 + 2 * angle);
  return maxC * share + minC * (1 - share);
}

/** Lag of the highest, night decay and lag of the lowest: air at 150 cm in Denver. */
const denver = { highestLagHours: 1.86, nightDecay: 2.2, lowestLagHours: -0.17 };

/** Sine by day, exponential decay by night. Parton & Logan 1981, Agricultural Meteorology 23:205. */
export function partonLoganC(day: DiurnalDay, hour: number, lags = denver): number {
  const { minC, maxC, sunriseHour, sunsetHour } = day;
  const dayHours = sunsetHour - sunriseHour;
  const lowestHour = sunriseHour + lags.lowestLagHours;
  const byDay = (at: number) =>
    minC + (maxC - minC) * Math.sin((Math.PI * (at - lowestHour)) / (dayHours + 2 * lags.highestLagHours));
  if (hour >= lowestHour && hour <= sunsetHour) return byDay(hour);
  const sinceSunset = (hour - sunsetHour + 24) % 24;
  const decay = Math.exp((-lags.nightDecay * sinceSunset) / (24 - dayHours));
  return minC + (byDay(sunsetHour) - minC) * decay;
}

/**
 * Sine to the highest four hours before sunset, sine to sunset, square root through the night to the next
 * lowest at sunrise; `hour` from sunrise to 24 hours later. Cesaraccio, Spano, Duce & Snyder 2001,
 * Int J Biometeorol 45:161.
 */
export function cesaraccioC(day: DiurnalDay & { nextMinC: number }, hour: number): number {
  const { minC, maxC, nextMinC, sunriseHour, sunsetHour } = day;
  const highestHour = sunsetHour - 4;
  const sunsetC = maxC - 0.39 * (maxC - nextMinC);
  if (hour <= highestHour) {
    const share = (hour - sunriseHour) / (highestHour - sunriseHour);
    return minC + (maxC - minC) * Math.sin((Math.PI / 2) * share);
  }
  if (hour <= sunsetHour) {
    return sunsetC + (maxC - sunsetC) * Math.sin((Math.PI / 2) * (1 + (hour - highestHour) / 4));
  }
  const nightHours = sunriseHour + 24 - sunsetHour;
  return sunsetC + (nextMinC - sunsetC) * Math.sqrt((hour - sunsetHour) / nightHours);
}
