/** A natural enemy's attacks as the hunt meets them: brought together by stage of the prey. */
import type { Attack, EnemyTraits } from '../species/record.ts';
import type { StageTable } from './stages.ts';

/** Stages of one kind of prey that meet the same attacks. */
export interface AttackOn {
  /** Of a wasp: its risk is uneven, so some hosts escape. */
  uneven: boolean;
  /** Share of the attacks that lay an egg; the others feed. */
  laidShare: number;
  /** Place among the pests, then the natural enemies of the world. */
  prey: number;
  /** Places of its stages, those waiting to lay included where adults are attacked; then, its laying adults. */
  stages: readonly number[];
  preference: number;
  ceilingPerDay: number;
  halfSearchPerM2: number;
  /** Share of the search that is lost while ants attend the prey. */
  antsTake: number;
}

export interface PreyTable {
  id: string;
  table: StageTable | undefined;
  /** By ants. */
  attended?: boolean;
}

export const isParasitoid = ({ attacks }: EnemyTraits): boolean =>
  attacks.some((attack) => attack.kind === 'parasitism');

/**
 * Attacks of one animal on one prey, brought together by stage: a wasp that lays into a stage and also feeds on it does
 * one or the other at each encounter, and either takes the same time.
 */
export function attacksOn(traits: EnemyTraits, { id, table, attended }: PreyTable, prey: number): AttackOn[] {
  const attacks = traits.attacks.filter((attack) => attack.prey === id);
  if (!table || attacks.length === 0) return [];
  const byStage = new Map<string, { own: Attack[]; stages: number[] }>();
  const places = [...table.stages.map(({ name }) => (name === 'waiting' ? 'adult' : name)), 'adult'];
  for (const [place, name] of places.entries()) {
    const own = attacks.filter(({ stages }) => stages.includes(name));
    const key = own.map((attack) => attacks.indexOf(attack)).join();
    const same = byStage.get(key) ?? { own, stages: [] };
    same.stages.push(place);
    byStage.set(key, same);
  }
  return [...byStage.values()]
    .filter(({ own }) => own.length > 0)
    .map(({ own, stages }) => ({
      prey,
      stages,
      uneven: isParasitoid(traits),
      ...together(own),
      antsTake: attended ? (traits.antsTake ?? 0) : 0,
    }));
}

/** Several kinds of attack on the same stages as one: ceilings add up, each is tried as often as it is preferred. */
function together(attacks: readonly Attack[]) {
  let [ceilingPerDay, tried, laid] = [0, 0, 0];
  for (const { kind, ceilingPerDay: most, preference = 1 } of attacks) {
    ceilingPerDay += most;
    tried += preference * most;
    if (kind === 'parasitism') laid += preference * most;
  }
  const { halfSearchPerM2 = 0 } = attacks[0]!;
  return { preference: tried / ceilingPerDay, ceilingPerDay, laidShare: laid / tried, halfSearchPerM2 };
}

/** Most attacks of a kind a day on this prey. */
export function mostPerDay({ attacks }: EnemyTraits, kind: Attack['kind'], prey: string): number {
  return attacks.reduce(
    (most, attack) =>
      attack.kind === kind && attack.prey === prey ? Math.max(most, attack.ceilingPerDay) : most,
    0,
  );
}
