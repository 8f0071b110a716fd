/** Every species of the virtual garden, and the names under which the season file knows them. */
import type { Release } from '../services/model/index.ts';
import { type Biology, type EnemyKind, enemyKinds, type Kind, kinds, type Species } from './biology.ts';
import { enemies } from './enemies.ts';
import { pests } from './pests.ts';

export const species: Record<Kind, Species> = { ...pests, ...enemies };

export const isEnemy = (kind: Kind): kind is EnemyKind => kind in enemies;

/** An empty record with one value for each species. */
export const forEachKind = <T>(make: (kind: Kind, biology: Biology) => T): Record<Kind, T> =>
  Object.fromEntries(kinds.map((kind) => [kind, make(kind, species[kind].biology)])) as Record<Kind, T>;

/** The garden's own name of an enemy that is sold; an error names those it knows. */
export function enemyKindOf(id: Release['enemy']): EnemyKind {
  const kind = enemyKinds.find((one) => enemies[one].enemy?.id === id);
  if (kind) return kind;
  const known = enemyKinds.map((one) => enemies[one].enemy?.id).join(', ');
  throw new RangeError(`The virtual garden has no ${id}. Choose one of: ${known}.`);
}
