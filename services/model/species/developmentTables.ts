/**
 * Days of development by constant temperature as published: tables that span enough temperatures to fit a rate
 * law (docs/rate-laws.md). One table, one paper, one stage, one host; never pooled.
 */
import type { SpeciesId } from '../season.ts';

export interface DevelopmentTable {
  id: string;
  species: SpeciesId;
  stage: 'egg to adult' | 'birth to adult' | 'birth to first birth';
  /** Host plant or prey. */
  on: string;
  source: string;
  /** Warmest temperature held, if none developed there. */
  noneAtC?: number;
  note?: string;
  days: readonly (readonly [temperatureC: number, days: number])[];
}

const inCollection = 'read in a collection of temperature responses that names the study';

export const developmentTables: readonly DevelopmentTable[] = [
  {
    id: 'myzus-persicae-deloach',
    species: 'myzus-persicae',
    stage: 'birth to first birth',
    on: 'cabbage or turnip',
    source:
      'DeLoach CJ 1974. Rate of increase of populations of cabbage, green peach, and turnip aphids at constant temperatures. Annals of the Entomological Society of America 67:332-340',
    note: inCollection,
    days: [
      [5, 68],
      [10, 26.2],
      [15, 13.9],
      [20, 8.8],
      [25, 7.7],
      [30, 9.2],
    ],
  },
  {
    id: 'myzus-persicae-barlow',
    species: 'myzus-persicae',
    stage: 'birth to adult',
    on: 'potato',
    source:
      'Barlow CA 1962. The influence of temperature on the growth of experimental populations of Myzus persicae and Macrosiphum euphorbiae. Canadian Journal of Zoology 40:145-156',
    noneAtC: 30,
    note: inCollection,
    days: [
      [5, 41.3],
      [10, 16.1],
      [15, 14],
      [20, 9.1],
      [25, 7.7],
    ],
  },
  {
    id: 'aphis-gossypii-xia',
    species: 'aphis-gossypii',
    stage: 'birth to adult',
    on: 'cotton',
    source:
      'Xia JY, van der Werf W, Rabbinge R 1999. Influence of temperature on bionomics of cotton aphid on cotton. Entomologia Experimentalis et Applicata 90:25-35',
    note: inCollection,
    days: [
      [10, 25.9],
      [15, 15.1],
      [20, 9.7],
      [25, 5.6],
      [30, 4.9],
      [35, 7.2],
    ],
  },
  {
    id: 'aphis-gossypii-parajulee',
    species: 'aphis-gossypii',
    stage: 'birth to first birth',
    on: 'cotton',
    source:
      'Parajulee MN 2007. Influence of constant temperatures on life history parameters of the cotton aphid infesting cotton. Environmental Entomology 36:666-672',
    note: `table, ${inCollection}; the abstract rounds to 26, 15, 8, 5, 5, 5 days`,
    days: [
      [10, 32.53],
      [15, 18.35],
      [20, 10.11],
      [25, 7.55],
      [30, 7.03],
      [35, 7.43],
    ],
  },
  {
    id: 'aphis-gossypii-zamani',
    species: 'aphis-gossypii',
    stage: 'birth to adult',
    on: 'cucumber',
    source:
      'Zamani AA, Talebi AA, Fathipour Y, Baniameri V 2006. Effect of temperature on biology and population growth parameters of Aphis gossypii on greenhouse cucumber. Journal of Applied Entomology 130:453-460. doi 10.1111/j.1439-0418.2006.01088.x',
    noneAtC: 35,
    note: inCollection,
    days: [
      [10, 20.7],
      [15, 11.09],
      [20, 7.44],
      [25, 5.6],
      [30, 3.81],
    ],
  },
  {
    id: 'aphis-gossypii-komazaki',
    species: 'aphis-gossypii',
    stage: 'birth to adult',
    on: 'citrus',
    source:
      'Komazaki S 1982. Effects of constant temperatures on population growth of three aphid species on citrus. Applied Entomology and Zoology 17:75-81',
    note: inCollection,
    days: [
      [15.2, 14.17],
      [19.8, 7.57],
      [24.5, 6.93],
      [27.5, 6.88],
      [29.7, 6.17],
    ],
  },
  {
    id: 'aulacorthum-solani-jandricic',
    species: 'aulacorthum-solani',
    stage: 'birth to adult',
    on: 'pansy',
    source:
      'Jandricic SE, Wraight SP, Bennett KC, Sanderson JP 2010. Developmental times and life table statistics of Aulacorthum solani at six constant temperatures. Environmental Entomology 39:1631-1642. doi 10.1603/EN09351',
    note: inCollection,
    days: [
      [10, 21.81],
      [15, 11.37],
      [20, 8.37],
      [25, 6.88],
      [30, 9.48],
    ],
  },
  {
    id: 'bemisia-tabaci-wang',
    species: 'bemisia-tabaci',
    stage: 'egg to adult',
    on: 'aubergine',
    source:
      'Wang K, Tsai JH 1996. Temperature effect on development and reproduction of silverleaf whitefly. Annals of the Entomological Society of America 89:375-384. doi 10.1093/aesa/89.3.375',
    note: inCollection,
    days: [
      [15, 104.9],
      [20, 29.8],
      [25, 17.6],
      [27, 16],
      [30, 13.6],
      [35, 18.8],
    ],
  },
  {
    id: 'frankliniella-occidentalis-katayama',
    species: 'frankliniella-occidentalis',
    stage: 'egg to adult',
    on: 'chrysanthemum florets',
    source:
      'Katayama H 1997. Effect of temperature on development and oviposition of western flower thrips Frankliniella occidentalis. Japanese Journal of Applied Entomology and Zoology 41:225-231',
    note: 'four temperatures, none in the heat',
    days: [
      [15, 34.2],
      [20, 19.2],
      [25, 12.1],
      [30, 9.5],
    ],
  },
  {
    id: 'amblyseius-swirskii-cairo',
    species: 'amblyseius-swirskii',
    stage: 'egg to adult',
    on: 'immatures of Eutetranychus orientalis',
    source:
      'Effect of food and temperature on the biology of Typhlodrompis swirskii, Cairo University (authors and year not seen)',
    note: 'female life cycle as printed; may include part of the days before the first egg',
    days: [
      [15, 18.5],
      [20, 14.3],
      [25, 10.8],
      [28, 9],
      [30, 7.7],
      [32, 6.8],
      [35, 6.1],
    ],
  },
];
