import type { ConditionRule } from './releaseCase.ts';

/** Bought enemies are for closed houses and rooms; outdoors the tool leaves it to those that arrive. */
export const indoors: ConditionRule = {
  id: 'indoors',
  judge({ season }) {
    const source = 'common practice, no source';
    return season.place.kind === 'outdoors'
      ? {
          verdict: 'fails',
          text: 'Outdoors: leave it to ladybirds, lacewings and hoverflies that come by themselves.',
          source,
        }
      : { verdict: 'holds', text: 'They stay inside the house.', source };
  },
};
