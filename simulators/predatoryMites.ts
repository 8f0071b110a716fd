/** The predatory mites' numbers. Marks as in enemies.ts. */
import type { Species } from './biology.ts';

const mite = {
  adultLifeCv: 0.4,
  femaleShare: 0.67,
  layingFades: 0.5,
  heatFromC: 34,
  heatHazardAt39C: 0.03,
  movesPerDay: 0.08,
  onCards: 0,
};
const ofMites = { how: 'eats', onlyByDay: false, appetite: [0, 0.35, 1], leavesPerDay: 0.03 } as const;

export const mites: Record<'swirskii' | 'cucumeris' | 'persimilis' | 'californicus', Species> = {
  /**
   * Amblyseius swirskii. Base 11.3, 130 degree-days: Lee & Gillespie 2011, Exp Appl Acarol 53:17 (no
   * growth below 15.5 degC). Half as many eggs on pollen alone; 14-17 first thrips a day at most. Half the eggs fail
   * at 11.4 hPa: Ferrero 2010. Eggs a day, life: MEM.
   */
  swirskii: {
    enemy: { id: 'amblyseius-swirskii', form: 'mixed stages in sachets', stage: 2 },
    biology: {
      ...mite,
      stages: [
        { name: 'egg', degreeDays: 33, cv: 0.1, survival: 0.95 },
        { name: 'young', degreeDays: 97, cv: 0.12, survival: 0.85 },
      ],
      lowerC: 11.3,
      optimumC: 31,
      zeroC: 37.4,
      preovipositionDegreeDays: 25,
      adultLifeDegreeDays: 300,
      offspringPerDay: 1.8,
      fecundity: [
        [13, 0],
        [16, 0.3],
        [22, 1],
        [30, 1],
        [36, 0],
      ],
      activity: [
        [12, 0],
        [16, 0.3],
        [22, 1],
        [32, 1],
        [37, 0],
      ],
      eggsFailAtHPa: 11.4,
      diet: {
        ...ofMites,
        prey: {
          whitefly: [1, 1, 0.2, 0, 0, 0],
          thrips: [0, 0.9, 0.1, 0, 0],
          spiderMite: [0.2, 0.2, 0.1, 0, 0],
        },
        searchM2PerDay: 0.03,
        mostPerDay: 14,
        needPerDay: 7,
        pollenCovers: 0.5,
        starvesPerDay: 0.12,
      },
    },
  },
  /** Neoseiulus cucumeris. Base 10.5, 118 degree-days; six first thrips a day: Shipp & Whitfield. The rest MEM. */
  cucumeris: {
    enemy: { id: 'neoseiulus-cucumeris', form: 'mixed stages in sachets', stage: 2 },
    biology: {
      ...mite,
      stages: [
        { name: 'egg', degreeDays: 36, cv: 0.1, survival: 0.94 },
        { name: 'young', degreeDays: 82, cv: 0.12, survival: 0.85 },
      ],
      lowerC: 10.5,
      optimumC: 29,
      zeroC: 37,
      preovipositionDegreeDays: 25,
      adultLifeDegreeDays: 300,
      offspringPerDay: 1.9,
      fecundity: [
        [10, 0],
        [15, 0.4],
        [20, 0.9],
        [25, 1],
        [30, 0.8],
        [35, 0],
      ],
      activity: [
        [8, 0],
        [15, 0.4],
        [20, 0.8],
        [24, 1],
        [31, 1],
        [36, 0],
      ],
      eggsFailAtHPa: 12,
      diet: {
        ...ofMites,
        prey: { thrips: [0, 1, 0.05, 0, 0], spiderMite: [0.2, 0.2, 0, 0, 0] },
        searchM2PerDay: 0.025,
        mostPerDay: 6,
        needPerDay: 3,
        pollenCovers: 0.5,
        starvesPerDay: 0.12,
      },
    },
  },
  /**
   * Phytoseiulus persimilis. Base 11, 77 degree-days; 20 eggs or larvae a day, 8.5 eaten for an egg laid; half the
   * eggs fail at 9.4 hPa: Ferrero 2010. Eats spider mites alone and goes when they are gone. Life and eggs: MEM.
   */
  persimilis: {
    enemy: { id: 'phytoseiulus-persimilis', form: 'adults and nymphs in a tube', stage: 2 },
    biology: {
      ...mite,
      stages: [
        { name: 'egg', degreeDays: 27, cv: 0.1, survival: 0.95 },
        { name: 'young', degreeDays: 50, cv: 0.12, survival: 0.92 },
      ],
      lowerC: 11,
      optimumC: 28,
      zeroC: 34,
      preovipositionDegreeDays: 18,
      adultLifeDegreeDays: 220,
      femaleShare: 0.8,
      offspringPerDay: 3.2,
      fecundity: [
        [12, 0],
        [15, 0.3],
        [20, 0.8],
        [25, 1],
        [29, 0.9],
        [33, 0],
      ],
      activity: [
        [11, 0],
        [15, 0.4],
        [20, 0.8],
        [25, 1],
        [29, 1],
        [34, 0],
      ],
      heatFromC: 32,
      eggsFailAtHPa: 9.4,
      movesPerDay: 0.12,
      diet: {
        ...ofMites,
        prey: { spiderMite: [1, 1, 0.9, 0.8, 0.4] },
        searchM2PerDay: 0.12,
        mostPerDay: 20,
        needPerDay: 14,
        pollenCovers: 0,
        starvesPerDay: 0.2,
        leavesPerDay: 0.15,
      },
    },
  },
  /** Neoseiulus californicus. Base 9.3, 100 degree-days; 41.6 eggs in 19.4 d, 0.6 female: Gotoh. 13 eggs eaten a day. */
  californicus: {
    enemy: { id: 'neoseiulus-californicus', form: 'mixed stages in sachets', stage: 2 },
    biology: {
      ...mite,
      stages: [
        { name: 'egg', degreeDays: 33, cv: 0.1, survival: 0.95 },
        { name: 'young', degreeDays: 67, cv: 0.12, survival: 0.9 },
      ],
      lowerC: 9.3,
      optimumC: 31,
      zeroC: 37,
      preovipositionDegreeDays: 22,
      adultLifeDegreeDays: 300,
      femaleShare: 0.6,
      offspringPerDay: 2.1,
      fecundity: [
        [10, 0],
        [15, 0.3],
        [20, 0.7],
        [25, 1],
        [32, 1],
        [36, 0],
      ],
      activity: [
        [10, 0],
        [15, 0.4],
        [20, 0.8],
        [25, 1],
        [33, 1],
        [37, 0],
      ],
      eggsFailAtHPa: 20,
      diet: {
        ...ofMites,
        prey: { spiderMite: [1, 0.8, 0.5, 0.3, 0.1], thrips: [0, 0.2, 0, 0, 0] },
        searchM2PerDay: 0.06,
        mostPerDay: 13,
        needPerDay: 7,
        pollenCovers: 0.35,
        starvesPerDay: 0.08,
      },
    },
  },
};
