/** All species records by id, and their traits by kind. */
import type { SpeciesId } from '../season.ts';
import { adaliaBipunctata } from './adalia-bipunctata.ts';
import { amblyseiusAndersoni } from './amblyseius-andersoni.ts';
import { amblyseiusSwirskii } from './amblyseius-swirskii.ts';
import { anthocorisNemoralis } from './anthocoris-nemoralis.ts';
import { aphelinusAbdominalis } from './aphelinus-abdominalis.ts';
import { aphidiusColemani } from './aphidius-colemani.ts';
import { aphidiusErvi } from './aphidius-ervi.ts';
import { aphidoletesAphidimyza } from './aphidoletes-aphidimyza.ts';
import { aphisGossypii } from './aphis-gossypii.ts';
import { aulacorthumSolani } from './aulacorthum-solani.ts';
import { bemisiaTabaci } from './bemisia-tabaci.ts';
import { chrysoperlaCarnea } from './chrysoperla-carnea.ts';
import { coccinellaSeptempunctata } from './coccinella-septempunctata.ts';
import { cryptolaemusMontrouzieri } from './cryptolaemus-montrouzieri.ts';
import { delphastusCatalinae } from './delphastus-catalinae.ts';
import { encarsiaFormosa } from './encarsia-formosa.ts';
import { episyrphusBalteatus } from './episyrphus-balteatus.ts';
import { eretmocerusEremicus } from './eretmocerus-eremicus.ts';
import { frankliniellaOccidentalis } from './frankliniella-occidentalis.ts';
import { macrolophusPygmaeus } from './macrolophus-pygmaeus.ts';
import { macrosiphumEuphorbiae } from './macrosiphum-euphorbiae.ts';
import { macrosiphumRosae } from './macrosiphum-rosae.ts';
import { myzusCerasi } from './myzus-cerasi.ts';
import { myzusPersicae } from './myzus-persicae.ts';
import { neoseiulusCalifornicus } from './neoseiulus-californicus.ts';
import { neoseiulusCucumeris } from './neoseiulus-cucumeris.ts';
import { oriusLaevigatus } from './orius-laevigatus.ts';
import { phytoseiulusPersimilis } from './phytoseiulus-persimilis.ts';
import { planococcusCitri } from './planococcus-citri.ts';
import type { EnemyTraits, PestTraits, SpeciesRecord } from './record.ts';
import { tetranychusUrticae } from './tetranychus-urticae.ts';
import { trialeurodesVaporariorum } from './trialeurodes-vaporariorum.ts';

export const pestRecords: readonly SpeciesRecord[] = [
  trialeurodesVaporariorum,
  bemisiaTabaci,
  myzusPersicae,
  aphisGossypii,
  macrosiphumEuphorbiae,
  aulacorthumSolani,
  macrosiphumRosae,
  myzusCerasi,
  frankliniellaOccidentalis,
  tetranychusUrticae,
  planococcusCitri,
];

/** Sold and released. */
export const enemyRecords: readonly SpeciesRecord[] = [
  amblyseiusSwirskii,
  phytoseiulusPersimilis,
  neoseiulusCucumeris,
  neoseiulusCalifornicus,
  amblyseiusAndersoni,
  encarsiaFormosa,
  eretmocerusEremicus,
  aphidiusColemani,
  aphidiusErvi,
  aphelinusAbdominalis,
  adaliaBipunctata,
  chrysoperlaCarnea,
  aphidoletesAphidimyza,
  macrolophusPygmaeus,
  oriusLaevigatus,
  delphastusCatalinae,
  cryptolaemusMontrouzieri,
];

/** Natural enemies that come by themselves. */
export const visitorRecords: readonly SpeciesRecord[] = [
  coccinellaSeptempunctata,
  episyrphusBalteatus,
  anthocorisNemoralis,
];

export const allRecords: readonly SpeciesRecord[] = [...pestRecords, ...enemyRecords, ...visitorRecords];

const byId = new Map(allRecords.map((record) => [record.id, record]));

/** The record of a species; throws when the catalogue has none for the id. */
export function speciesById(id: SpeciesId): SpeciesRecord {
  const record = byId.get(id);
  if (!record) throw new Error(`no species record for ${id}: choose one of ${[...byId.keys()].join(', ')}`);
  return record;
}

/** Traits of a pest; throws when the record is a natural enemy. */
export function pestTraits(record: SpeciesRecord): PestTraits {
  if (record.traits.kind !== 'pest') throw new Error(`${record.id} is a natural enemy, not a pest`);
  return record.traits;
}

/** Traits of a natural enemy; throws when the record is a pest. */
export function enemyTraits(record: SpeciesRecord): EnemyTraits {
  if (record.traits.kind !== 'enemy') throw new Error(`${record.id} is a pest, not a natural enemy`);
  return record.traits;
}
