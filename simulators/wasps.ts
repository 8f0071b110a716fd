/** The parasitic wasps' numbers. Marks as in enemies.ts. A wasp's stages are those of her young in the host. */
import type { Species } from './biology.ts';

const female = {
  preovipositionDegreeDays: 0,
  offspringPerDay: 0,
  layingFades: 0,
  fecundity: [[20, 0]],
} as const;
const ofWasps = {
  how: 'lays-into',
  onlyByDay: true,
  appetite: [0, 0, 1],
  needPerDay: 0,
  pollenCovers: 0,
  starvesPerDay: 0,
  leavesPerDay: 0,
} as const;

export const wasps: Record<'encarsia' | 'aphidius', Species> = {
  /**
   * Encarsia formosa in the scale: base 12.8, 189 degree-days, black from 0.55 of it. No search at 15
   * and little at 18 degC: van Roermund & van Lenteren 1995. 5 hosts a day at 20 degC to 10 at 25, 0.28 of them fed
   * on; life 20 d at 20 degC: MEM, wide. Sold as black scales on cards.
   */
  encarsia: {
    enemy: { id: 'encarsia-formosa', form: 'pupa on card', stage: 1 },
    biology: {
      ...female,
      stages: [
        { name: 'white', degreeDays: 104, cv: 0.08, survival: 0.85 },
        { name: 'black', degreeDays: 85, cv: 0.08, survival: 0.88 },
      ],
      lowerC: 12.8,
      optimumC: 30,
      zeroC: 36,
      adultLifeDegreeDays: 144,
      adultLifeCv: 0.4,
      femaleShare: 1,
      activity: [
        [15, 0],
        [18, 0.15],
        [21, 1],
        [30, 1],
        [36, 0],
      ],
      heatFromC: 35,
      heatHazardAt39C: 0.05,
      movesPerDay: 0.5,
      onCards: 1,
      diet: { ...ofWasps, prey: { whitefly: [0, 0, 0.3, 1, 1, 0] }, searchM2PerDay: 0.3, mostPerDay: 8 },
    },
  },
  /**
   * Aphidius colemani: base 2.4, 238 degree-days to the wasp, a mummy for the last 0.4 of it (DER); 26 to 59 hosts a
   * day: Ahn 2024. Walks from about 10 degC: MEM. Life 8 d at 20 degC: MEM. Sold as mummies.
   */
  aphidius: {
    enemy: { id: 'aphidius-colemani', form: 'mummies in a tube', stage: 1 },
    biology: {
      ...female,
      stages: [
        { name: 'hidden', degreeDays: 143, cv: 0.08, survival: 0.85 },
        { name: 'mummy', degreeDays: 95, cv: 0.08, survival: 0.85 },
      ],
      lowerC: 2.4,
      optimumC: 26,
      zeroC: 33,
      adultLifeDegreeDays: 140,
      adultLifeCv: 0.4,
      femaleShare: 0.6,
      activity: [
        [9, 0],
        [13, 0.4],
        [18, 0.9],
        [28, 1],
        [34, 0],
      ],
      heatFromC: 32,
      heatHazardAt39C: 0.08,
      movesPerDay: 0.5,
      onCards: 1,
      diet: {
        ...ofWasps,
        prey: { aphid: [0.7, 1, 1, 0.6, 0.3], peachAphid: [0.7, 1, 1, 0.6, 0.3] },
        searchM2PerDay: 0.25,
        mostPerDay: 35,
      },
    },
  },
};
