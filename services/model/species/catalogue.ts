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
import type { EnemyTraits, KnownSpeciesId, PestTraits, SpeciesRecord } from './record.ts';
import { tetranychusUrticae } from './tetranychus-urticae.ts';
import { trialeurodesVaporariorum } from './trialeurodes-vaporariorum.ts';

export const pestRecords: readonly SpeciesRecord[] = [trialeurodesVaporariorum, myzusPersicae, aphisGossypii];

export const enemyRecords: readonly SpeciesRecord[] = [
  amblyseiusSwirskii,
  phytoseiulusPersimilis,
  neoseiulusCucumeris,
  encarsiaFormosa,
  aphidiusColemani,
  adaliaBipunctata,
  chrysoperlaCarnea,
];

/** Known, but not yet to be followed or released in a place; each says why, or waits for its place in the forecast. */
export const knownRecords: readonly SpeciesRecord<KnownSpeciesId>[] = [
  bemisiaTabaci,
  macrosiphumEuphorbiae,
  aulacorthumSolani,
  macrosiphumRosae,
  myzusCerasi,
  tetranychusUrticae,
  frankliniellaOccidentalis,
  planococcusCitri,
  neoseiulusCalifornicus,
  amblyseiusAndersoni,
  eretmocerusEremicus,
  aphidiusErvi,
  aphelinusAbdominalis,
  aphidoletesAphidimyza,
  macrolophusPygmaeus,
  oriusLaevigatus,
  delphastusCatalinae,
  cryptolaemusMontrouzieri,
  coccinellaSeptempunctata,
  episyrphusBalteatus,
  anthocorisNemoralis,
];

const byId = new Map([...pestRecords, ...enemyRecords].map((record) => [record.id, record]));

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
