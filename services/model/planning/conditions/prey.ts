import type { ConditionRule } from './releaseCase.ts';

/** Something to eat or to lay into: specialists starve in a clean house. */
export const prey: ConditionRule = {
  id: 'prey',
  judge({ evidence, enemy, traits }) {
    const source =
      'Messelink et al. 2014, BioControl, doi 10.1007/s10526-014-9579-6: specialists vanish when prey is scarce';
    if (evidence.onLeaves > 0) {
      return {
        verdict: 'holds',
        text: `There is food for ${enemy.shortName}: the pest was seen on leaves.`,
        source,
      };
    }
    if (evidence.daysSeen > 0) {
      return { verdict: 'holds', text: 'Adults were caught, so young ones are on the leaves.', source };
    }
    if (traits.livesOnPollen !== undefined) {
      return {
        verdict: 'cannot-say',
        text: `Nothing was seen lately; ${enemy.shortName} can wait on pollen where plants are in flower.`,
        source: `${enemy.name}, species page`,
      };
    }
    return { verdict: 'cannot-say', text: 'Nothing was seen lately: look under five leaves first.', source };
  },
};
