/** The sun above the air. FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), chapter 3. */

export interface SunOfDay {
  declinationRad: number;
  sunsetAngleRad: number;
  /** Inverse relative distance from earth to sun, squared. */
  inverseDistance: number;
  /** Hours the centre of the sun is above the horizon, without refraction. */
  daylightHours: number;
  /** MJ a m2 and day outside the atmosphere. */
  extraterrestrialMJPerM2: number;
}

/** Equations 21 and 23-25, 34 for a latitude and a day of the year. */
export function sunOfDay({ latitudeDeg, dayOfYear }: { latitudeDeg: number; dayOfYear: number }): SunOfDay {
  const yearAngle = (2 * Math.PI * dayOfYear) / 365;
  const declinationRad = 0.409 * Math.sin(yearAngle - 1.39);
  const inverseDistance = 1 + 0.033 * Math.cos(yearAngle);
  const latitude = (latitudeDeg * Math.PI) / 180;
  const cosine = -Math.tan(latitude) * Math.tan(declinationRad);
  const sunsetAngleRad = Math.acos(Math.min(1, Math.max(-1, cosine)));
  const sunlit =
    sunsetAngleRad * Math.sin(latitude) * Math.sin(declinationRad) +
    Math.cos(latitude) * Math.cos(declinationRad) * Math.sin(sunsetAngleRad);
  return {
    declinationRad,
    sunsetAngleRad,
    inverseDistance,
    daylightHours: (24 / Math.PI) * sunsetAngleRad,
    extraterrestrialMJPerM2: ((24 * 60) / Math.PI) * 0.082 * inverseDistance * sunlit,
  };
}
