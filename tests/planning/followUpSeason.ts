/** Invented seasons with releases, at a steady temperature so that days of development can be reckoned by hand. */
import { temperatureOutlook } from '../../services/model/climate/outlook.ts';
import { temperatureCurve } from '../../services/model/climate/temperatureCurve.ts';
import { upTo } from '../../services/model/inference/seasonPath.ts';
import { ledger } from '../../services/model/ledger.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import { settledChecks } from '../../services/model/planning/followUp/checks.ts';
import type { Season } from '../../services/model/season.ts';
import { fixedFit, invented } from './season.ts';

export const instant = (day: string): string => `${day}T09:00:00Z`;

/** Hourly readings of one temperature from 1 April to 30 September. */
const steady = (temperatureC: number) =>
  Array.from({ length: 183 * 24 }, (_, hour) => ({
    sensorId: 'bench',
    time: new Date(Date.parse('2026-04-01T00:00:00Z') + hour * 3_600_000).toISOString(),
    // A reading that stands still for half a day is not believed.
    temperatureC: temperatureC + (hour % 2 === 0 ? 0.01 : -0.01),
  }));

export const release = (day: string, enemy: string, form: string, more: object = {}) => ({
  id: `release-${day}`,
  enemy,
  form,
  number: 120,
  time: instant(day),
  ...more,
});
export const encarsia = (day: string, more: object = {}) =>
  release(day, 'encarsia-formosa', 'pupa on card', more);

export const leaves = (day: string, seen: object[], number = 10) => ({
  id: `leaves-${day}`,
  time: instant(day),
  leaves: number,
  seen,
});
/** Black scales and living ones, in all and on so many leaves. */
export const scales = (day: string, black: number, white: number) =>
  leaves(day, [
    { kind: 'black-scale', infestedLeaves: Math.min(10, black), total: black },
    { kind: 'whitefly-scale', infestedLeaves: Math.min(10, white), total: white },
  ]);

export const seasonAt = (
  temperatureC: number | undefined,
  changes: Partial<Record<keyof Season, unknown>>,
  place: object = {},
): Season =>
  invented({ ...(temperatureC === undefined ? {} : { readings: steady(temperatureC) }), ...changes }, place);

/** The checks as the advice makes them, with the ledger of the season's own warmth. */
export function checksOn(whole: Season, day: string) {
  const asOfMs = Date.parse(instant(day));
  const { forecast } = fixedFit({ left: 0.8 });
  return settledChecks(upTo(whole, asOfMs), { ...forecast, ledger: ledgerOn(whole, asOfMs) }, asOfMs);
}

export function ledgerOn(whole: Season, asOfMs: number) {
  const season = upTo(whole, asOfMs);
  const curve = temperatureCurve(season, asOfMs);
  const outlook = temperatureOutlook(curve, season, {
    fromMs: asOfMs,
    days: 72,
    members: 20,
    random: seeded(1),
  });
  return ledger(season, curve, outlook, asOfMs);
}
