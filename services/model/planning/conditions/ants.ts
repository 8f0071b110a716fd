import { pestTraits, speciesById } from '../../species/catalogue.ts';
import { dayMs } from '../../units.ts';
import { capital, verbFor } from '../grammar.ts';
import type { ConditionRule } from './releaseCase.ts';

const monthMs = 28 * dayMs;

/** Ants guard pests for their honeydew and drive natural enemies away. */
export const ants: ConditionRule = {
  id: 'ants',
  judge({ season, pest, enemy, traits, asOfMs }) {
    const source = 'Wyss et al. 1999: ladybird larvae work significantly worse on trees with ants';
    const record = speciesById(pest);
    if (!pestTraits(record).antsAttend) {
      return {
        verdict: 'holds',
        text: `Ants seldom matter for ${record.shortName}.`,
        source: 'common practice, no source',
      };
    }
    const last = season.sightings
      .filter((s) => asOfMs - Date.parse(s.time) < monthMs && /\bants?\b/i.test(s.what))
      .sort((a, b) => Date.parse(a.time) - Date.parse(b.time))
      .at(-1);
    if (last === undefined) {
      return {
        verdict: 'cannot-say',
        text: 'Look for ants on the stems first; nobody has noted any or none.',
        source,
      };
    }
    if (/\bno ants?\b/i.test(last.what)) return { verdict: 'holds', text: 'No ants were seen.', source };
    const seen = 'Ants were seen: keep them off the stems before the release.';
    const taken = Math.round(100 * (traits.antsTake ?? 0));
    return taken > 0
      ? {
          verdict: 'fails',
          text: `${seen} ${capital(enemy.shortName)} ${verbFor(enemy.shortName, 'loses', 'lose')} about ${taken} % of their search among ants.`,
          source: `${enemy.name}, species page`,
        }
      : { verdict: 'fails', text: seen, source };
  },
};
