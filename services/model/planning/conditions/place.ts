import { capital, verbFor } from '../grammar.ts';
import type { ConditionRule } from './releaseCase.ts';

/** Bought enemies are for closed houses and rooms; outdoors only those at home there may come in question. */
export const indoors: ConditionRule = {
  id: 'indoors',
  judge({ season, enemy, traits }) {
    const source = 'common practice, no source';
    if (season.place.kind !== 'outdoors')
      return { verdict: 'holds', text: 'They stay inside the house.', source };
    const name = capital(enemy.shortName);
    const home = traits.release?.outdoors;
    return home === undefined
      ? {
          verdict: 'fails',
          text: `${name} ${verbFor(enemy.shortName, 'is', 'are')} for closed houses: outdoors leave it to those that come by themselves.`,
          source,
        }
      : {
          verdict: 'cannot-say',
          text: `${name} ${verbFor(enemy.shortName, 'lives', 'live')} in the open too, but many fly off: those that come by themselves cost nothing.`,
          source: home,
        };
  },
};
