import type { SpeciesRecord } from './record.ts';

export const amblyseiusSwirskii: SpeciesRecord = {
  id: 'amblyseius-swirskii',
  name: 'Amblyseius swirskii Athias-Henriot',
  commonName: 'swirskii predatory mite',
  shortName: 'swirskii mites',
  development: {
    lowerC: 11.3,
    plateauC: 31.5,
    zeroC: 37.4,
    // Shares of the stages and survival 0.9: judgement; no table by stage was read.
    stages: [
      { name: 'egg', degreeDays: 42, cv: 0.12, survival: 0.96 },
      { name: 'larva', degreeDays: 18, cv: 0.15, survival: 0.98 },
      { name: 'protonymph', degreeDays: 35, cv: 0.15, survival: 0.98 },
      { name: 'deutonymph', degreeDays: 35, cv: 0.15, survival: 0.98 },
    ],
    source:
      'Threshold, best and upper temperature: Lee & Gillespie 2011. Total: days times (T - 11.3) of the Qassim means on date-palm mite (128 at 25 °C, 136 at 30 °C), our derivation. Shares of the stages: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 2 days at 25 degC, judgement.
      preovipositionDegreeDays: 27,
      lifeDaysAt20C: 46,
      femaleShare: 0.65,
      eggsPerDay: 2.3,
      fecundityByTemperature: [
        [13, 0],
        [15.5, 0.05],
        [20, 0.4],
        [25, 0.7],
        [30, 1],
        [35, 1],
        [37.4, 0],
      ],
      source:
        'Eggs and life: Qassim date-palm mite study (37.1 eggs in 16.2 days at 30 °C, 31.9 in 19.8 days at 25 °C; life 29.4 days at 25 °C moved to 20 °C by the rate of development). Pollen alone gives about half (Lee & Gillespie 2011). Sex ratio and time before the first egg: judgement.',
    },
    attacks: [
      {
        pest: 'trialeurodes-vaporariorum',
        stages: ['egg', 'N1'],
        kind: 'predation',
        ceilingPerDay: 15,
        source: 'from memory: 10 to 20 eggs or crawlers a day is often quoted, no measured value found',
      },
      {
        pest: 'frankliniella-occidentalis',
        stages: ['L1'],
        kind: 'predation',
        ceilingPerDay: 15,
        source: 'Shirvani et al. 2023, refitted in FoRAGE v4: 13.7 to 16.6 a day at 25 °C',
      },
      {
        pest: 'tetranychus-urticae',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 15,
        source: 'Xiao et al. 2013: 15.1 a day; poor in webbing',
      },
    ],
    activityByTemperature: [
      [12, 0],
      [15, 0.4],
      [20, 0.55],
      [25, 0.95],
      [27.5, 1],
      [35, 1],
      [37.5, 0.5],
      [40, 0],
    ],
    livesAboveC: 13,
    huntsAboveC: 15.5,
    eggHalfFailsAtVpdKPa: 1.14,
    release: {
      form: 'mixed stages in sachets',
      verb: 'hang',
      piece: ['sachet', 'sachets'],
      perPiece: 100,
      perM2: 50,
      where: 'in the leaves, out of the sun',
      establishes: 0.8,
      lookAfterDays: 21,
      lookFor: 'predatory mites under the leaves',
      source: 'common practice, no source: 25 to 50 a m2 before the pest, 50 to 100 on a light one',
    },
  },
  rows: [],
  openQuestions: [],
};
