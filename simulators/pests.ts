/** The pests' numbers. Marks: MEM from memory, DER derived, no source = judgement. */
import type { PestKind, Species } from './biology.ts';

const aphid = {
  adultLifeCv: 0.35,
  femaleShare: 1,
  movesPerDay: 0.25,
  onCards: 4,
  crowdedAtPerPlant: 1500,
  flightEndsAfterDegreeDays: 45,
};

export const pests: Record<PestKind, Species> = {
  /**
   * Trialeurodes vaporariorum. Base 8.3, 381 degree-days: Osborne 1982, Environ Entomol 11:483; shares of
   * the stages DER from a 21 degC row (8.4, 3.7, 4.7, 4.7, 8.4 d). Survival 0.81 in all, 5 eggs a day and
   * 32 d of life at 20 degC: MEM, tomato, right to a factor of two. Fewer eggs above 24: Xie 2011. No
   * flight at 12.3 degC, less above 25-30: Bonsignore 2015. Damage from an hour at 39: Cui 2008.
   */
  whitefly: {
    pest: 'trialeurodes-vaporariorum',
    biology: {
      stages: [
        { name: 'egg', degreeDays: 107, cv: 0.1, survival: 0.95 },
        { name: 'first', degreeDays: 47, cv: 0.15, survival: 0.92 },
        { name: 'second', degreeDays: 60, cv: 0.15, survival: 0.96 },
        { name: 'third', degreeDays: 60, cv: 0.15, survival: 0.97 },
        { name: 'fourth', degreeDays: 107, cv: 0.1, survival: 0.97 },
      ],
      lowerC: 8.3,
      optimumC: 28,
      zeroC: 35,
      preovipositionDegreeDays: 19,
      adultLifeDegreeDays: 374,
      adultLifeCv: 0.45,
      femaleShare: 0.5,
      offspringPerDay: 5,
      layingFades: 0,
      fecundity: [
        [10, 0],
        [20, 1],
        [25, 1],
        [31, 0.1],
        [35, 0],
      ],
      activity: [
        [12.3, 0],
        [20, 1],
        [26, 1],
        [35, 0.3],
      ],
      heatFromC: 33,
      heatHazardAt39C: 0.05,
      movesPerDay: 0.15,
      onCards: 1,
      crowdedAtPerPlant: 300,
    },
  },
  /**
   * Aphis gossypii. Base 6.2, 108.9 degree-days birth to adult: Kersting 1999, J Appl Entomol 123:23; four
   * equal instars. Survival 0.81 at 25 degC: Xia 1999. Young in a life 9.8, 58.9, 17.3 at 10, 30, 35 degC
   * (Parajulee 2007) and 59 at 25 on cucumber, spread evenly over 208 degree-days (DER). Adult life: MEM.
   */
  aphid: {
    pest: 'aphis-gossypii',
    biology: {
      ...aphid,
      stages: ['first', 'second', 'third', 'fourth'].map((name) => ({
        name,
        degreeDays: 27.2,
        cv: 0.15,
        survival: 0.95,
      })),
      lowerC: 6.2,
      optimumC: 30,
      zeroC: 36,
      preovipositionDegreeDays: 12,
      adultLifeDegreeDays: 220,
      offspringPerDay: 5.3,
      layingFades: 0,
      fecundity: [
        [6.2, 0],
        [10, 0.03],
        [15, 0.47],
        [25, 1],
        [30, 1.27],
        [35, 0.3],
        [36, 0],
      ],
      activity: [
        [13, 0],
        [17, 1],
        [30, 1],
        [35, 0],
      ],
      heatFromC: 32,
      heatHazardAt39C: 0.08,
    },
  },
  /**
   * Myzus persicae. Base 4; instars 25.2, 27.1, 30.9, 30.7, to the first young 20.4 degree-days: Whalon &
   * Smilowitz 1979. Survival 0.78: same. Young a day DER from the growth of DeLoach 1974 (0.074, 0.167, 0.270,
   * 0.277 at 10, 15, 20, 25 degC, none at 30) and those days. Adult life of 20 d at 20 degC: MEM.
   */
  peachAphid: {
    pest: 'myzus-persicae',
    biology: {
      ...aphid,
      stages: [25.2, 27.1, 30.9, 30.7].map((degreeDays, instar) => ({
        name: ['first', 'second', 'third', 'fourth'][instar]!,
        degreeDays,
        cv: 0.15,
        survival: 0.94,
      })),
      lowerC: 4,
      optimumC: 26,
      zeroC: 32.5,
      preovipositionDegreeDays: 20.4,
      adultLifeDegreeDays: 320,
      offspringPerDay: 3.4,
      layingFades: 0,
      fecundity: [
        [4, 0],
        [10, 0.15],
        [15, 0.49],
        [20, 1],
        [25, 0.65],
        [29, 0.1],
        [30, 0],
      ],
      activity: [
        [13, 0],
        [17, 1],
        [28, 1],
        [33, 0],
      ],
      heatFromC: 30,
      heatHazardAt39C: 0.12,
    },
  },
  /**
   * Frankliniella occidentalis. Base 9.5, 194 degree-days: Katayama 1997; shares of the stages, life and sexes MEM.
   * Three eggs a day on leaves with some flowers, between 240 in a life in flowers and 35 on leaves: judgement. None
   * adult at 35: Zhang 2012. The pupa lies in the ground, out of reach of hunters.
   */
  thrips: {
    pest: 'frankliniella-occidentalis',
    biology: {
      stages: [
        { name: 'egg', degreeDays: 48.5, cv: 0.1, survival: 0.92 },
        { name: 'first', degreeDays: 31, cv: 0.15, survival: 0.88 },
        { name: 'second', degreeDays: 60, cv: 0.15, survival: 0.95 },
        { name: 'pupa', degreeDays: 54.5, cv: 0.12, survival: 0.91 },
      ],
      lowerC: 9.5,
      optimumC: 30,
      zeroC: 35,
      preovipositionDegreeDays: 22,
      adultLifeDegreeDays: 300,
      adultLifeCv: 0.45,
      femaleShare: 0.67,
      offspringPerDay: 3,
      layingFades: 0.5,
      fecundity: [
        [10, 0],
        [15, 0.3],
        [20, 0.65],
        [25, 1],
        [30, 1],
        [34, 0.2],
        [35, 0],
      ],
      activity: [
        [12, 0],
        [16, 0.2],
        [22, 1],
        [30, 1],
        [36, 0.3],
      ],
      heatFromC: 34,
      heatHazardAt39C: 0.05,
      movesPerDay: 0.2,
      onCards: 1.2,
      crowdedAtPerPlant: 120,
    },
  },
  /**
   * Tetranychus urticae. Base 10, 141 degree-days: Herbert 1981; shares from an Egyptian study; 22 to the first egg
   * (1.5 d at 25 degC). Survival 0.86 on bean; 8 eggs a day at 25 degC at the peak, 0.75 female: MEM. Growth 0.08 at
   * 15 and 0.32 at 30 degC: Bounfour & Tanigoshi 2001. Rests in days under 13.5-14 h: Ferguson 2009.
   */
  spiderMite: {
    pest: 'tetranychus-urticae',
    biology: {
      stages: [
        { name: 'egg', degreeDays: 61, cv: 0.1, survival: 0.97 },
        { name: 'larva', degreeDays: 26, cv: 0.15, survival: 0.96 },
        { name: 'first nymph', degreeDays: 29, cv: 0.15, survival: 0.96 },
        { name: 'second nymph', degreeDays: 25, cv: 0.15, survival: 0.96 },
      ],
      lowerC: 10,
      optimumC: 32,
      zeroC: 39,
      preovipositionDegreeDays: 22,
      adultLifeDegreeDays: 260,
      adultLifeCv: 0.4,
      femaleShare: 0.75,
      offspringPerDay: 5.6,
      layingFades: 0.8,
      fecundity: [
        [11, 0],
        [15, 0.17],
        [20, 0.6],
        [25, 1],
        [30, 1.2],
        [35, 0.8],
        [39, 0],
      ],
      activity: [
        [10, 0],
        [20, 1],
        [35, 1],
      ],
      heatFromC: 37,
      heatHazardAt39C: 0.02,
      movesPerDay: 0.02,
      onCards: 0,
      crowdedAtPerPlant: 5000,
      restsBelowDayLengthH: 13.7,
    },
  },
};
