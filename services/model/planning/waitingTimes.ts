/**
 * Days from a wash or spray until a natural enemy may be released. The label and local law come
 * first; these are the tool's own cautious readings, each with its source.
 */
import type { EnemyId, TreatmentKind } from '../season.ts';
import { enemyTraits, speciesById } from '../species/catalogue.ts';

export type EnemyGroup = 'mite' | 'wasp' | 'predator';

/** By how it lives: wasps lay into their hosts, and mites alone have a protonymph among their young stages. */
export function groupOf(enemy: EnemyId): EnemyGroup {
  const record = speciesById(enemy);
  if (enemyTraits(record).attacks.some((attack) => attack.kind === 'parasitism')) return 'wasp';
  return record.development.stages.some((stage) => stage.name === 'protonymph') ? 'mite' : 'predator';
}

export interface WaitingTime {
  /** Absent: nobody can say without the label. */
  days?: number;
  source: string;
}

const practice = 'common practice, no source';
const sameForAll = (waiting: WaitingTime): Record<EnemyGroup, WaitingTime> => ({
  mite: waiting,
  wasp: waiting,
  predator: waiting,
});

export const waitingTimes: Record<TreatmentKind, Record<EnemyGroup, WaitingTime>> = {
  'water-jet': sameForAll({
    days: 0,
    source: 'leaves no residue (Texas A&M AgriLife Extension, water wands)',
  }),
  soap: sameForAll({
    days: 1,
    source: 'a dry soap film had no effect on mites; sources differ on the wait, so: dry, then next day',
  }),
  oil: sameForAll({ days: 3, source: practice }),
  neem: {
    mite: { days: 14, source: practice },
    wasp: {
      days: 14,
      source: 'evidence conflicts (Encarsia -42 to -60 % parasitism); two weeks is common practice',
    },
    predator: {
      days: 14,
      source: 'larvae and nymphs are harmed (Schmutterer 1997); two weeks is common practice',
    },
  },
  pyrethrins: sameForAll({ days: 7, source: 'from memory: 3 to 7 days, longer under glass' }),
  sulphur: {
    mite: {
      days: 14,
      source: 'hatching larvae of another predatory mite died on 7-day-old residues (Beers et al. 2009)',
    },
    wasp: { days: 1, source: 'whitefly parasitoids < 30 % affected; once dry, judgement' },
    predator: { days: 1, source: practice },
  },
  'other-spray': sameForAll({ source: 'depends on the product: read the label, ask the maker' }),
};

/** An unknown spray may harm for months under glass (UMass Extension: avoid pesticides 3 to 4 months before). */
export const unknownSprayDays = 120;
