import { antsAt } from '../../observation/ants.ts';
import { pestTraits, speciesById } from '../../species/catalogue.ts';
import { capital, verbFor } from '../grammar.ts';
import type { ConditionRule } from './releaseCase.ts';

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
    const about = antsAt(season.sightings, asOfMs);
    if (about === 'nobody looked') {
      return {
        verdict: 'cannot-say',
        text: 'Look for ants on the stems first; nobody has noted any or none.',
        source,
      };
    }
    if (about === 'none') return { verdict: 'holds', text: 'No ants were seen.', source };
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
