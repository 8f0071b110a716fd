/** What a day is like for a species. */
import { type Biology, degreeDaysPerDay, factorAt, heatHazard } from './biology.ts';

/** The weather of a day on the leaves, hour by hour. */
export interface Hour {
  temperatureC: number;
  daylight: boolean;
  deficitHPa: number;
}

/** What the day amounts to for a species. */
export function dayFor(biology: Biology, hours: readonly Hour[]) {
  const sum = { degreeDays: 0, heat: 0, laying: 0, activity: 0, byDay: 0, daylightHours: 0, deficitHPa: 0 };
  for (const { temperatureC, daylight, deficitHPa } of hours) {
    const active = factorAt(biology.activity, temperatureC);
    sum.degreeDays += degreeDaysPerDay(biology, temperatureC) / 24;
    sum.heat += heatHazard(biology, temperatureC);
    sum.laying += factorAt(biology.fecundity, temperatureC) / 24;
    sum.activity += active / 24;
    if (daylight) sum.byDay += active / 12;
    if (daylight) sum.daylightHours += 1;
    sum.deficitHPa += deficitHPa / hours.length;
  }
  return sum;
}

/** Share of today's eggs that the dry air spares: logistic in the deficit, half at the published one. */
export function hatchingShare({ eggsFailAtHPa }: Biology, deficitHPa: number): number {
  return eggsFailAtHPa === undefined ? 1 : 1 / (1 + Math.exp((deficitHPa - eggsFailAtHPa) / 1.5));
}
