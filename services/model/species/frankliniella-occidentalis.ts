import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { fromMemory, inJarosik, judgement } from './sources.ts';

const katayama1997 =
  'Katayama H 1997. Effect of temperature on development and oviposition of western flower thrips Frankliniella occidentalis. Japanese Journal of Applied Entomology and Zoology 41:225-231';
const mcDonald1998 =
  'McDonald JR, Bale JS, Walters KFA 1998. Effect of temperature on development of the western flower thrips, Frankliniella occidentalis. European Journal of Entomology 95:301-306';
const li2011 =
  'Li JZ, Zhi JR, Gai HT 2011. Effects of host plants and temperature on Frankliniella occidentalis growth and development. Chinese Journal of Ecology. doi 10.13292/j.1000-4890.2011.0085';
const vanRijn1995 =
  'van Rijn PCJ, Mollema C, Steenhuis-Broers GM 1995. Comparative life history studies of Frankliniella occidentalis and Thrips tabaci on cucumber. Bulletin of Entomological Research 85:285-297';
const zhang2007 =
  'Zhang ZJ, Wu QJ, Li XF, Zhang YJ, Xu BY, Zhu GR 2007. Life history of western flower thrips on five different vegetable leaves. Journal of Applied Entomology 131:347-354. doi 10.1111/j.1439-0418.2007.01186.x';
const zhang2012 =
  'Zhang ZJ, Zhang YJ, Xu BY, Zhu GR, Wu QJ 2012. Effects of temperature on development, reproduction and population growth of the western flower thrips. Acta Entomologica Sinica 55:1168-1177';
const papadaki =
  'Papadaki M, Harizanova V, Stoeva A. Duration of development of Frankliniella occidentalis and population growth on different vegetable host plants. Agricultural University Plovdiv';
const inraeThrips = 'INRAE e-phytia, thrips biology (courgette)';
const lublinkhof1977 =
  'Lublinkhof J, Foster DE 1977. Development and reproductive capacity of Frankliniella occidentalis reared at three temperatures. Journal of the Kansas Entomological Society 50:313-316';
const onCapsicum =
  'Survival, longevity, fecundity and life parameters of Frankliniella occidentalis and F. intonsa on capsicum at 19 to 31 °C (authors not seen)';
const tsumuki2007 =
  'Tsumuki H, Ishida H, Yoshida H, Sonoda S, Izumi Y, Murai T 2007. Cold hardiness of adult western flower thrips. Applied Entomology and Zoology 42:223-229';
const shipp1993 =
  'Shipp JL, Gillespie TJ 1993. Influence of temperature and water vapor pressure deficit on survival of Frankliniella occidentalis. Environmental Entomology 22:726-732';

const rows: readonly PublishedRow[] = [
  ...thermalLine(katayama1997, 'SEEN', ['egg to adult', 9.5, 194, 'chrysanthemum florets', 'in use']),
  ...thermalLine(mcDonald1998, 'SEEN', ['egg to adult', 7.9, 268, '10 to 35 °C']),
  ...thermalLine(li2011, 'SEEN', ['egg to adult', 6.35, 331.36, 'broad bean', 'slowest of four legumes']),
  ...rowsFrom(vanRijn1995, 'SEEN', [['lower threshold, egg to adult', 10.9, '°C', 'cucumber, 15 to 28 °C']]),
  ...collectedLines(inJarosik, 'egg to adult', 'host not stated', [
    ['Jarosik V, Kolias M, Lapchin L, Rochat J, Dixon AFG 1997', 10.82, 227.3],
    ['McDonald JR, Bale JS, Walters KFA 1998', 7.84, 265.2],
    ['McDonald JR, Bale JS, Walters KFA 1998', 7.61, 273.6],
    ['Stacey DA, Fellowes MDE 2002', 6.8, 233.2],
    ['Stacey DA, Fellowes MDE 2002', 6.97, 239.3],
    ['Lowry VK, Smith JW, Mitchell FL 1992', 5.9, 263.3],
    ['Ishida H, Murai T, Sonoda S, et al. 2003', 3.1, 285.6, 'outlier'],
    ['Ishida H, Murai T, Sonoda S, et al. 2003', 0.9, 328.5, 'outlier'],
  ]),
  ...byTemperature(katayama1997, 'SEEN', ['days, egg to adult', 'd', 'chrysanthemum florets'], {
    15: 34.2,
    20: 19.2,
    25: 12.1,
    30: 9.5,
  }),
  ...byTemperature(zhang2012, 'SEEN', ['days, egg to adult', 'd', 'vegetable leaves', 'about'], {
    15: 30,
    30: 10,
  }),
  ...rowsFrom(zhang2007, 'SEEN', [
    ['days, egg to adult', 9.22, 'd', '25 to 27 °C, cucumber', 'temperature not seen, 27 °C from memory'],
    ['days, egg to adult', 10.19, 'd', '25 to 27 °C, cabbage'],
    ['days, egg to adult', 10.42, 'd', '25 to 27 °C, bean'],
    ['days, egg to adult', 12.15, 'd', '25 to 27 °C, sweet pepper'],
    ['days, egg to adult', 12.91, 'd', '25 to 27 °C, tomato'],
  ]),
  ...rowsFrom(papadaki, 'SEEN', [
    ['days, egg to adult', 11, 'd', '29 °C, aubergine'],
    ['days, egg to adult', 11.6, 'd', '29 °C, cucumber'],
    ['days, egg to adult', 12, 'd', '29 °C, tomato, bean, pepper'],
  ]),
  ...byTemperature(inraeThrips, 'SEEN', ['days, life cycle', 'd', 'general'], { 15: 34, 30: 13 }),
  ...byTemperature(lublinkhof1977, 'MEM', ['days, egg to adult', 'd', 'bean'], {
    15: 44.1,
    20: 22.4,
    30: 15,
  }),
  ...rowsFrom(fromMemory, 'MEM', [
    ['share of the time, egg', 0.25, 'share', 'all temperatures', 'split in use'],
    ['share of the time, L1', 0.16, 'share', 'all temperatures'],
    ['share of the time, L2', 0.31, 'share', 'all temperatures'],
    ['share of the time, prepupa', 0.085, 'share', 'all temperatures'],
    ['share of the time, pupa', 0.195, 'share', 'all temperatures'],
    ['share of females', 0.6, 'share', 'all plants', 'in use'],
    ['days before the first egg', 2, 'd', '25 °C', 'in use'],
    ['eggs a day', 3, 'eggs', '25 °C, leaves and flowers'],
  ]),
  ...rowsFrom(zhang2012, 'SEEN', [
    ['no adults at', 35, '°C', 'vegetable leaves', 'end in use'],
    ['survival, larva to adult', 0.628, 'share', '20 °C, vegetable leaves', 'highest of 15 to 30 °C'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'all stages', 'in use'],
    ['start of heat damage', 33, '°C', 'all stages', 'in use'],
    ['flight starts', 15, '°C', 'daylight', 'no measurement was read'],
    [
      'adults a m2 of ground that halve laying',
      400,
      'per m2',
      'about 10 a leaf',
      'in use; harm to cucumber begins at 3 to 7.5 a flower',
    ],
  ]),
  ...bandsFrom(zhang2007, 'SEEN', [
    ['survival, egg to adult', 0.75, 0.8, 'share', 'cucumber, cabbage, tomato', '0.77 in use'],
  ]),
  ...rowsFrom(zhang2007, 'SEEN', [
    ['survival, egg to adult', 0.5, 'share', 'sweet pepper'],
    ['mean first instars a day', 6.12, 'larvae', '25 to 27 °C, cucumber'],
    ['mean first instars a day', 1.89, 'larvae', '25 to 27 °C, sweet pepper'],
    ['first instars in a life', 76.62, 'larvae', '25 to 27 °C, cabbage'],
    ['first instars in a life', 7.67, 'larvae', '25 to 27 °C, sweet pepper'],
  ]),
  ...byTemperature(
    zhang2012,
    'SEEN',
    ['first instars in a life', 'larvae', 'vegetable leaves', 'over the life below: level and shape in use'],
    { 15: 37.7, 20: 32.56, 25: 37.8, 30: 9.36 },
  ),
  ...byTemperature(zhang2012, 'SEEN', ['adult life', 'd', 'vegetable leaves'], { 15: 36, 30: 10 }),
  ...rowsFrom('36 days at 15 and 10 at 30 °C, both moved to 20 °C by the rate of development', 'DER', [
    ['adult life', 19.2, 'd', '20 °C, vegetable leaves', 'in use; 18.9 and 19.5'],
  ]),
  ...rowsFrom('37.8 first instars of Zhang et al. 2012 over a life of 13 days, falling in a line', 'DER', [
    ['eggs a day', 5, 'first instars', '25 °C, vegetable leaves, first days', 'in use'],
  ]),
  ...bandsFrom(katayama1997, 'SEEN', [
    ['eggs in a life', 230, 250, 'eggs', '15 to 25 °C, chrysanthemum florets', 'life over 3 months at 15 °C'],
  ]),
  ...rowsFrom(
    '240 eggs in 90 days at 15 °C, moved to 32 days at 25 °C, against 37.8 first instars in 13 days',
    'DER',
    [['eggs a day in flowers against leaves', 2.6, 'times', '25 °C, chrysanthemum florets', 'in use']],
  ),
  ...rowsFrom(
    '6.12 on cucumber and 1.89 x 0.5 / 0.77 on pepper, each over 2.9 on leaves (37.8 in 13 days)',
    'DER',
    [
      ['young a day on cucumber against leaves', 2.1, 'times', '25 to 27 °C', 'in use'],
      ['young a day on sweet pepper against leaves', 0.4, 'times', '25 to 27 °C', 'in use'],
    ],
  ),
  ...rowsFrom(tsumuki2007, 'SEEN', [
    ['adult life, at most', 60, 'd', '5 °C, females with food'],
    ['adult life, at most', 40, 'd', '0 °C, females with food'],
  ]),
  ...rowsFrom(shipp1993, 'SEEN', [
    ['heat that clears a house', 40, '°C', 'deficit of 4.76 kPa, end of the season'],
    ['survival, pupa', 0.6, 'share', '35 °C, dry air', 'all live otherwise'],
  ]),
  ...rowsFrom(zhang2007, 'SEEN', [
    ['growth rate r', 0.208, 'per day', '25 to 27 °C, cucumber'],
    ['growth rate r', 0.184, 'per day', '25 to 27 °C, cabbage'],
    ['growth rate r', 0.164, 'per day', '25 to 27 °C, bean'],
    ['growth rate r', 0.1, 'per day', '25 to 27 °C, tomato'],
    ['growth rate r', 0.017, 'per day', '25 to 27 °C, sweet pepper leaf'],
  ]),
  ...rowsFrom(katayama1997, 'SEEN', [['growth rate r', 0.198, 'per day', '30 °C, chrysanthemum florets']]),
  ...rowsFrom(onCapsicum, 'SEEN', [
    ['growth rate r', 0.1347, 'per day', '31 °C, sweet pepper', 'highest of 19 to 31 °C'],
  ]),
];

export const frankliniellaOccidentalis: SpeciesRecord = {
  id: 'frankliniella-occidentalis',
  name: 'Frankliniella occidentalis (Pergande)',
  commonName: 'western flower thrips',
  shortName: 'thrips',
  development: {
    lowerC: 9.5,
    plateauC: 30,
    zeroC: 35,
    // Survival: 0.77 from egg to adult (Zhang et al. 2007), shared out by degree-days.
    stages: [
      { name: 'egg', degreeDays: 48.5, cv: 0.1, survival: 0.937 },
      { name: 'L1', degreeDays: 31, cv: 0.1, survival: 0.959 },
      { name: 'L2', degreeDays: 60, cv: 0.1, survival: 0.922 },
      { name: 'prepupa', degreeDays: 16.5, cv: 0.1, survival: 0.978 },
      { name: 'pupa', degreeDays: 38, cv: 0.1, survival: 0.95 },
    ],
    source:
      'Threshold and total: Katayama 1997 (9.5 °C, 194 degree-days, chrysanthemum florets). Shares of the stages: from memory. End: no adults at 35 °C (Zhang et al. 2012). Survival: Zhang et al. 2007. Spreads and plateau: judgement.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // Two days at 25 degC.
      preovipositionDegreeDays: 31,
      lifeDaysAt20C: 19.2,
      femaleShare: 0.6,
      eggsPerDay: 5,
      fecundityByTemperature: [
        [9.5, 0],
        [15, 0.36],
        [20, 0.59],
        [25, 1],
        [30, 0.32],
        [35, 0],
      ],
      source:
        'Young, life and shape: Zhang et al. 2012 on leaves, counted as first instars, so that eggs that fail are left out twice. Sex ratio and time before the first egg: from memory.',
    },
    heatFromC: 33,
    heatHazardAt39C: 0.05,
    flightByTemperature: [
      [15, 0],
      [20, 1],
      [30, 1],
      [40, 0],
    ],
    // Against the leaves of Zhang et al. 2012, 2.9 first instars a day: cucumber 6.12, pepper 1.89 with fewer alive;
    // the rest: exp of the difference in r to cucumber over 15 days, near a generation (Zhang et al. 2007).
    hostFactor: {
      chrysanthemum: 2.6,
      cucumber: 2.1,
      cabbage: 1.5,
      bean: 1.1,
      tomato: 0.4,
      pepper: 0.4,
    },
    // Seasons of the virtual garden were looked at.
    crowdingPerM2: 400,
    seen: { trap: 'thrips', leaves: ['thrips'] },
  },
  rows,
  openQuestions: [
    'In flowers a female laid 230 to 250 eggs, on leaves she left 35 larvae: flowers and pollen decide. The value in use is that of leaves; chrysanthemum counts as flowers, other crops in flower will grow faster thrips than said.',
    'Sweet pepper leaves hardly feed it (0.017 a day), plants in flower do (0.135 at 31 °C): 0.4 in use lies between.',
    'Lines run from 0.9 to 10.9 °C and 194 to 331 degree-days; at 20 °C they give 18 to 24 days.',
    'How the time is shared among the stages is from memory; no table by stage was read.',
    'The temperature of one study on five vegetables was not seen (25 to 27 °C).',
    'Daily swings of 10 or 20 °C around 27 °C slow its growth; the line in use does not know that.',
    'Flight by temperature is a judgement.',
  ],
};
