import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, ferrero2010, fromMemory, inForage, judgement, qassim } from './sources.ts';

const leeGillespie2011 =
  'Lee HS, Gillespie DR 2011. Life tables and development of Amblyseius swirskii at different temperatures. Experimental and Applied Acarology 53:17-27. doi 10.1007/s10493-010-9385-5';
const cairo =
  'Effect of food and temperature on the biology of Typhlodrompis swirskii, Cairo University (authors and year not seen)';
const onCitrusMites =
  'Effect of temperature and humidity on Amblyseius swirskii fed on Phyllocoptruta oleivora and Eutetranychus orientalis (authors not seen)';
const farazmand2021 = 'Farazmand A, Amir-Maafi M 2021, Journal of Economic Entomology';

const rows: readonly PublishedRow[] = [
  ...rowsFrom(leeGillespie2011, 'SEEN', [
    ['lower threshold, egg to adult', 11.3, '°C', 'cattail pollen', 'in use'],
    ['no development at', 13, '°C', 'cattail pollen', 'in use as "lives above"'],
    ['fastest development at', 31.5, '°C', 'cattail pollen'],
    ['upper limit of development', 37.4, '°C', 'cattail pollen', 'in use'],
    ['grows in number above', 15.5, '°C', 'cattail pollen', 'in use as "hunts above"'],
    ['eggs in a life', 1.3, 'eggs', '15 °C, cattail pollen'],
    ['eggs in a life', 16.1, 'eggs', '25 °C, cattail pollen', 'half of that on mites'],
  ]),
  ...rowsFrom('days times (T - 11.3) of the Qassim means, 128 at 25 °C and 136 at 30 °C', 'DER', [
    ['degree-days, egg to adult', 130, 'degree-days', 'above 11.3 °C', 'in use'],
  ]),
  ...thermalLine(`least squares on the means of: ${qassim}`, 'DER', [
    'egg to adult',
    10.69,
    136.7,
    'date palm mite',
  ]),
  ...thermalLine(`least squares on the means of: ${cairo}`, 'DER', [
    'egg to adult',
    7.041,
    176.6,
    'citrus brown mite',
    'contradicts the failure at 13 °C',
  ]),
  ...byTemperature(qassim, 'SEEN', ['days, egg to adult', 'd', 'date palm mite, 50 % humidity'], {
    25: 9.37,
    30: 7.29,
    35: 5.56,
  }),
  ...byTemperature(
    cairo,
    'SEEN',
    ['days, egg to adult', 'd', 'citrus brown mite', 'stage limits not defined'],
    { 15: 18.5, 20: 14.3, 25: 10.8, 28: 9, 30: 7.7, 32: 6.8, 35: 6.1 },
  ),
  ...byTemperature(qassim, 'SEEN', ['eggs in a life', 'eggs', 'date palm mite'], {
    25: 31.91,
    30: 37.1,
    35: 42.16,
  }),
  ...byTemperature(qassim, 'SEEN', ['days of egg-laying', 'd', 'date palm mite'], {
    25: 19.77,
    30: 16.18,
    35: 13.94,
  }),
  ...byTemperature(qassim, 'SEEN', ['adult life', 'd', 'date palm mite'], {
    25: 29.39,
    30: 24.79,
    35: 20.64,
  }),
  ...rowsFrom('days at 35 °C below those at 30 °C in the Qassim and Cairo studies', 'DER', [
    ['fastest development at', 35, '°C', 'mites as prey', 'in use as start of the plateau'],
  ]),
  ...rowsFrom(
    '29.39 days at 25 °C (Qassim) less 2 before the first egg, moved to 20 °C by the rate of development',
    'DER',
    [['adult life from the first egg', 43.1, 'd', '20 °C', 'in use']],
  ),
  ...byTemperature(
    'eggs in a life (Qassim) / (0.583 x 43.1 days x 8.7 / (T - 11.3)): laying falls in a line',
    'DER',
    ['eggs a day, first days', 'eggs', 'date palm mite', 'in use, 35 °C as the best'],
    { 25: 2, 30: 3.17, 35: 4.57 },
  ),
  ...rowsFrom('1.3 against 16.1 eggs in lives of 101 and 27 days (Lee & Gillespie 2011)', 'DER', [
    ['eggs a day at 15 °C against 25 °C', 0.022, 'share', 'cattail pollen', 'in use'],
  ]),
  ...rowsFrom(
    '16.1 eggs on pollen (Lee & Gillespie 2011) against 31.91 on mites (Qassim), both at 25 °C',
    'DER',
    [['share of laying without prey', 0.5, 'share', '25 °C, cattail pollen', 'in use']],
  ),
  ...rowsFrom(onCitrusMites, 'SEEN', [
    ['mean eggs a day', 1.2, 'eggs', '16 °C, citrus rust mite'],
    ['mean eggs a day', 4.2, 'eggs', '30 °C, citrus rust mite'],
    ['mean eggs a day', 0.86, 'eggs', '16 °C, citrus brown mite'],
    ['mean eggs a day', 3.84, 'eggs', '30 °C, citrus brown mite'],
  ]),
  ...rowsFrom(
    'Xu X, Enkegaard A 2010. Prey preference of Amblyseius swirskii. Journal of Insect Science 10:149',
    'SEEN',
    [
      [
        'thrips taken against spider mite nymphs',
        2,
        'times',
        '25 °C, both offered',
        'about; preference in use',
      ],
    ],
  ),
  ...rowsFrom(`Fathipour et al. 2017${inForage}`, 'SEEN', [
    ['most prey a day', 27, 'spider mite eggs', '25 °C, adult female 27 days old', '32 to 71 when younger'],
  ]),
  ...byTemperature(onCitrusMites, 'SEEN', ['growth rate r', 'per day', 'citrus rust mite'], {
    16: 0.144,
    23: 0.195,
    30: 0.28,
    37: 0.181,
  }),
  ...byTemperature(
    `${farazmand2021}${inForage}`,
    'SEEN',
    ['most prey a day', 'nymphs', 'spider mite nymphs'],
    { 15: 11.9, 20: 15.5, 25: 26.7, 27.5: 27.5, 30: 27.9, 35: 32.4, 37.5: 14.4 },
  ),
  ...bandsFrom(`Shirvani et al. 2023, Systematic and Applied Acarology${inForage}`, 'SEEN', [
    ['most prey a day', 13.7, 16.6, 'first-instar thrips', '25 °C', '15 in use'],
  ]),
  ...rowsFrom('Xiao Y, Osborne LS, Chen J, McKenzie CL 2013. Journal of Insect Science 13:8', 'SEEN', [
    ['most prey a day', 15.1, 'spider mite eggs', 'temperature not stated', '15 in use'],
  ]),
  ...bandsFrom(fromMemory, 'MEM', [
    ['most prey a day', 10, 20, 'whitefly eggs', '25 °C', 'often quoted, never found measured; 15 in use'],
    [
      'most prey a day',
      10,
      20,
      'eggs of the aphid midge',
      '25 °C',
      'eaten; how many is taken as whitefly eggs',
    ],
    ['most prey a day', 3, 6, 'young cucumeris mites', '25 °C', 'eaten as readily as thrips; 5 in use'],
  ]),
  ...rowsFrom(ferrero2010, 'SEEN', [
    ['half the eggs fail at a vapour pressure deficit of', 1.14, 'kPa', '63 % humidity', 'in use'],
  ]),
  ...rowsFrom('as Phytoseiulus persimilis, with water', 'DER', [
    ['adults live without food for', 7.5, 'd', '20 °C', '5 to 10; in use'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 25, 50, 'per m2', 'pollen present', '50 in use'],
    ['release on a light attack', 50, 100, 'per m2', 'twice, a week apart'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['days before the first egg', 2, 'd', '25 °C', 'as in cucumeris (INRAE), in use'],
  ]),
];

export const amblyseiusSwirskii: SpeciesRecord = {
  id: 'amblyseius-swirskii',
  name: 'Amblyseius swirskii Athias-Henriot',
  commonName: 'swirskii predatory mite',
  shortName: 'swirskii mites',
  development: {
    lowerC: 11.3,
    plateauC: 35,
    zeroC: 37.4,
    // Shares of the stages and survival 0.9: judgement; no table by stage was read.
    stages: [
      { name: 'egg', degreeDays: 42, cv: 0.12, survival: 0.96 },
      { name: 'larva', degreeDays: 18, cv: 0.15, survival: 0.98 },
      { name: 'protonymph', degreeDays: 35, cv: 0.15, survival: 0.98 },
      { name: 'deutonymph', degreeDays: 35, cv: 0.15, survival: 0.98 },
    ],
    source:
      'Threshold and upper temperature: Lee & Gillespie 2011; fastest at 35 °C in the Qassim and Cairo studies. Total: days times (T - 11.3) of the Qassim means on date-palm mite (128 at 25 °C, 136 at 30 °C), our derivation. Shares of the stages: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 2 days at 25 degC, judgement.
      preovipositionDegreeDays: 27.4,
      lifeDaysAt20C: 43.1,
      femaleShare: 0.65,
      eggsPerDay: 4.57,
      fecundityByTemperature: [
        [13, 0],
        [15, 0.01],
        [25, 0.44],
        [30, 0.69],
        [35, 1],
        [37.4, 0],
      ],
      source:
        'Eggs and life: Qassim date-palm mite study (31.9, 37.1 and 42.2 eggs in a life at 25, 30 and 35 °C; life 29.4 days at 25 °C). Cold end: eggs at 15 °C against 25 °C on pollen (Lee & Gillespie 2011). Sex ratio and time before the first egg: judgement.',
    },
    attacks: [
      ...(['trialeurodes-vaporariorum', 'bemisia-tabaci'] as const).map((prey) => ({
        prey,
        stages: ['egg', 'N1'],
        kind: 'predation' as const,
        ceilingPerDay: 15,
        source: 'from memory: 10 to 20 eggs or crawlers a day is often quoted, no measured value found',
      })),
      {
        prey: 'frankliniella-occidentalis',
        stages: ['L1'],
        kind: 'predation',
        ceilingPerDay: 15,
        source: 'Shirvani et al. 2023, refitted in FoRAGE v4: 13.7 to 16.6 a day at 25 °C',
      },
      {
        prey: 'tetranychus-urticae',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 15,
        preference: 0.5,
        source:
          'Xiao et al. 2013: 15.1 a day; half as readily as thrips (Xu & Enkegaard 2010); poor in webbing',
      },
      {
        prey: 'tetranychus-urticae',
        stages: ['larva', 'protonymph', 'deutonymph'],
        kind: 'predation',
        ceilingPerDay: 27.5,
        preference: 0.5,
        source:
          'Farazmand & Amir-Maafi 2021, refitted in FoRAGE v4: 27.5 nymphs a day at 27.5 °C; half as readily as thrips (Xu & Enkegaard 2010)',
      },
      {
        prey: 'aphidoletes-aphidimyza',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 15,
        source: 'from memory: it eats eggs of the midge; how many is taken as of whitefly eggs',
      },
      {
        prey: 'neoseiulus-cucumeris',
        stages: ['larva', 'protonymph'],
        kind: 'predation',
        ceilingPerDay: 5,
        source: 'from memory: Buitenhuis et al. 2010, each eats the young of the other',
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
    searchM2PerDay: 0.005,
    // Read across from Phytoseiulus persimilis.
    starvesInDays: 7.5,
    livesOnPollen: 0.5,
    release: {
      form: 'mixed stages in sachets',
      verb: 'hang',
      piece: ['sachet', 'sachets'],
      perPiece: 100,
      perM2: 100,
      where: 'in the leaves, out of the sun',
      establishes: 0.8,
      lookAfterDays: 21,
      lookFor: 'predatory mites under the leaves',
      source:
        'common practice, no source: 25 to 50 a m2 before the pest, 50 to 100 on a light one; a parcel is advised only once the pest is caught',
    },
  },
  rows,
  openQuestions: [
    'How many whitefly eggs it eats a day was not found measured anywhere.',
    'In the cold the strains part: one study has growth at 16 °C, the other none below 15.5 °C. The cautious one is in use.',
    'Lee & Gillespie 2011 find the fastest development at 31.5 °C, two other studies at 35 °C.',
    'Days by stage were not read; the shares are a judgement.',
  ],
};
