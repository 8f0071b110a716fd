import { deficitsKPa } from '../../climate/dryAir.ts';
import { dayMs } from '../../units.ts';
import type { ConditionRule } from './releaseCase.ts';

const weekMs = 7 * dayMs;

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
    const deficits = deficitsKPa(season.readings).filter(({ timeMs }) => asOfMs - timeMs < weekMs);
    if (deficits.length < 24) {
      return {
        verdict: 'cannot-say',
        text: 'Too few humidity readings this week to judge the eggs.',
        source,
      };
    }
    const mean = deficits.reduce((sum, { deficitKPa }) => sum + deficitKPa, 0) / deficits.length;
    const isMoist = mean < limit;
    return {
      verdict: isMoist ? 'holds' : 'fails',
      text: `The air is ${isMoist ? 'moist enough' : 'too dry'} for their eggs: its dryness (vapour pressure deficit) was ${mean.toFixed(2)} kPa on average this week; from ${limit.toFixed(2)} kPa half of them fail.`,
      source,
    };
  },
};
