/**
 * The natural enemies' numbers. Search is judgement throughout: dish values do not scale to plants. Marks: MEM from
 * memory, DER derived, no source = judgement.
 */
import type { EnemyKind, Species } from './biology.ts';
import { mites } from './predatoryMites.ts';
import { wasps } from './wasps.ts';

export const enemies: Record<EnemyKind, Species> = {
  ...wasps,
  ...mites,
  /**
   * Orius laevigatus. Base 11.3, 297 degree-days; eggs hardly below 15 degC; 18 adult thrips a day at most. Life,
   * eggs and nymphs that live: MEM.
   */
  orius: {
    enemy: { id: 'orius-laevigatus', form: 'adults and old nymphs', stage: 2 },
    biology: {
      stages: [
        { name: 'egg', degreeDays: 85, cv: 0.1, survival: 0.9 },
        { name: 'nymph', degreeDays: 212, cv: 0.1, survival: 0.7 },
      ],
      lowerC: 11.3,
      optimumC: 31,
      zeroC: 36,
      preovipositionDegreeDays: 45,
      adultLifeDegreeDays: 340,
      adultLifeCv: 0.4,
      femaleShare: 0.5,
      offspringPerDay: 3,
      layingFades: 0.5,
      fecundity: [
        [15, 0],
        [20, 0.6],
        [25, 1],
        [30, 1],
        [35, 0],
      ],
      activity: [
        [12, 0],
        [18, 0.5],
        [24, 1],
        [33, 1],
        [36, 0],
      ],
      heatFromC: 34,
      heatHazardAt39C: 0.05,
      movesPerDay: 0.4,
      onCards: 0,
      diet: {
        how: 'eats',
        prey: {
          thrips: [0, 0.7, 1, 0, 0.6],
          aphid: [0.1, 0.1, 0, 0, 0],
          spiderMite: [0, 0.1, 0.1, 0.1, 0.1],
        },
        searchM2PerDay: 0.12,
        mostPerDay: 15,
        onlyByDay: true,
        appetite: [0, 0.5, 1],
        needPerDay: 6,
        pollenCovers: 0.4,
        starvesPerDay: 0.06,
        leavesPerDay: 0.06,
      },
    },
  },
  /**
   * Adalia bipunctata. Base 9.4, 257 degree-days; a larva eats some 190 small aphids in all, an adult 76 to 98 a day
   * offered in plenty. Sold as larvae; the beetles mostly fly off: common practice, no source.
   */
  ladybird: {
    enemy: { id: 'adalia-bipunctata', form: 'larvae', stage: 1 },
    biology: {
      stages: [
        { name: 'egg', degreeDays: 45, cv: 0.1, survival: 0.7 },
        { name: 'larva', degreeDays: 125, cv: 0.1, survival: 0.6 },
        { name: 'pupa', degreeDays: 87, cv: 0.1, survival: 0.9 },
      ],
      lowerC: 9.4,
      optimumC: 29,
      zeroC: 35,
      preovipositionDegreeDays: 80,
      adultLifeDegreeDays: 500,
      adultLifeCv: 0.5,
      femaleShare: 0.5,
      offspringPerDay: 10,
      layingFades: 0.5,
      fecundity: [
        [12, 0],
        [20, 0.8],
        [25, 1],
        [32, 0],
      ],
      activity: [
        [10, 0],
        [15, 0.5],
        [20, 1],
        [30, 1],
        [35, 0],
      ],
      heatFromC: 33,
      heatHazardAt39C: 0.08,
      movesPerDay: 0.4,
      onCards: 0,
      diet: {
        how: 'eats',
        prey: { aphid: [1, 1, 0.8, 0.6, 0.4], peachAphid: [1, 1, 0.8, 0.6, 0.4] },
        searchM2PerDay: 0.5,
        mostPerDay: 50,
        onlyByDay: false,
        appetite: [0, 0.4, 0, 1],
        needPerDay: 25,
        pollenCovers: 0,
        starvesPerDay: 0.25,
        leavesPerDay: 0.1,
        wandersOffPerDay: 0.25,
      },
    },
  },
};
