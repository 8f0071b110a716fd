/**
 * What sprays do. Shares of those hit that die: soap and oil end what they wet, 42 to 85 % in trials on mites; a dry
 * film does nothing; neem works on the young for five days (Tedeschi 2001); pyrethrins for about five: practice. The
 * table itself is judgement.
 */
import type { Treatment } from '../services/model/index.ts';
import { type Kind, kinds } from './biology.ts';
import type { Colony, Insect } from './colony.ts';
import { chance, type Random } from './random.ts';
import { isEnemy } from './species.ts';

interface Effect {
  egg: number;
  young: number;
  adult: number;
  /** Residue: chance a day of dying, and for how many days. */
  residuePerDay: number;
  residueDays: number;
}

const none = { residuePerDay: 0, residueDays: 0 };
const poison: Effect = { egg: 0.1, young: 0.6, adult: 0.8, residuePerDay: 0.25, residueDays: 5 };
const effects: Record<Treatment['kind'], Effect> = {
  'water-jet': { egg: 0.1, young: 0.45, adult: 0.35, ...none },
  soap: { egg: 0.1, young: 0.65, adult: 0.55, ...none },
  oil: { egg: 0.5, young: 0.7, adult: 0.5, ...none },
  neem: { egg: 0.1, young: 0.4, adult: 0.1, residuePerDay: 0.08, residueDays: 5 },
  pyrethrins: poison,
  sulphur: { egg: 0.05, young: 0.3, adult: 0.2, residuePerDay: 0.05, residueDays: 7 },
  'other-spray': poison,
};

export interface Residue {
  perDay: number;
  days: number;
}

/** Washes or sprays the house now: whoever sits on the covered leaves is hit. Answers with what stays on them. */
export function wash(
  colonies: Record<Kind, Colony>,
  { kind, coveredShare }: Pick<Treatment, 'kind' | 'coveredShare'>,
  random: Random,
): Residue {
  const effect = effects[kind];
  for (const name of kinds) {
    const colony = colonies[name];
    const before = colony.insects.length;
    colony.insects = colony.insects.filter(
      (insect) => !chance(random, coveredShare * shareLost(effect, colony, insect)),
    );
    colony.flows.washed += before - colony.insects.length;
  }
  return { perDay: coveredShare * effect.residuePerDay, days: effect.residueDays };
}

function shareLost(effect: Effect, { biology, kind }: Colony, { stage }: Insect): number {
  if (stage === biology.stages.length) return effect.adult;
  const name = biology.stages[stage]!.name;
  if (name === 'egg') return effect.egg;
  if (name === 'pupa' || name === 'mummy' || name === 'black') return 0.1 * effect.young;
  // Old whitefly scales sit fast and are waxy; young wasps share the fate of their hosts.
  if (kind === 'whitefly' && stage >= 3) return 0.5 * effect.young;
  return isEnemy(kind) && biology.diet?.how === 'lays-into' ? 0.7 * effect.young : effect.young;
}
