import { saturationVapourPressureKPa } from '../../climate/humidity.ts';
import type { ConditionRule } from './releaseCase.ts';

const weekMs = 7 * 86_400_000;

/** Air moist enough for the eggs of predatory mites. */
export const eggHumidity: ConditionRule = {
  id: 'egg-humidity',
  judge({ season, enemy, traits, asOfMs }) {
    const limit = traits.eggHalfFailsAtVpdKPa;
    if (limit === undefined) {
      return {
        verdict: 'holds',
        text: `No humidity limit is known for ${enemy.shortName}.`,
        source: 'species page',
      };
    }
    const source = 'Ferrero et al. 2010: vapour pressure deficit at which half the eggs hatch';
    const deficits = season.readings
      .filter((r) => r.humidityPct !== undefined && r.humidityPct > 2 && r.humidityPct < 99.5)
      .filter((r) => Date.parse(r.time) <= asOfMs && asOfMs - Date.parse(r.time) < weekMs)
      .map((r) => saturationVapourPressureKPa(r.temperatureC) * (1 - (r.humidityPct ?? 0) / 100));
    if (deficits.length < 24) {
      return {
        verdict: 'cannot-say',
        text: 'Too few humidity readings this week to judge the eggs.',
        source,
      };
    }
    const mean = deficits.reduce((sum, d) => sum + d, 0) / deficits.length;
    return {
      verdict: mean < limit ? 'holds' : 'fails',
      text: `The air lacked ${mean.toFixed(2)} kPa on average this week; half of the eggs fail at ${limit.toFixed(2)} kPa.`,
      source,
    };
  },
};
