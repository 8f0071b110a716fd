/** All species records by id, and their traits by kind. */
import type { SpeciesId } from '../season.ts';
import { adaliaBipunctata } from './adalia-bipunctata.ts';
import { amblyseiusSwirskii } from './amblyseius-swirskii.ts';
import { aphidiusColemani } from './aphidius-colemani.ts';
import { aphisGossypii } from './aphis-gossypii.ts';
import { chrysoperlaCarnea } from './chrysoperla-carnea.ts';
import { encarsiaFormosa } from './encarsia-formosa.ts';
import { myzusPersicae } from './myzus-persicae.ts';
import { neoseiulusCucumeris } from './neoseiulus-cucumeris.ts';
import { phytoseiulusPersimilis } from './phytoseiulus-persimilis.ts';
import type { EnemyTraits, KnownSpeciesId, PestTraits, SpeciesRecord } from './record.ts';
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
export const knownRecords: readonly SpeciesRecord<KnownSpeciesId>[] = [];

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
