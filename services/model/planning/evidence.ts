/**
 * What the counts of the last weeks say by themselves, before any forecast: the evidence of the plain
 * rule (docs/decisions/0003-first-trigger.md).
 */
import type { Counted, LeafKind, PestId, Season } from '../season.ts';
import { leafKindsOf, trapKindOf } from '../species/signs.ts';

const dayMs = 86_400_000;

export interface Evidence {
  /** Trap counts that count (not lost, not down) in the last 16 days. */
  countedTraps: number;
  /** Catch per trap and week pooled over 16 days by exposure and counted fraction; absent without a count. */
  catchPerTrapWeek?: number;
  /** Days with this pest on a trap or leaf within 28 days. */
  daysSeen: number;
  /** This pest on leaves in the last 16 days. */
  onLeaves: number;
  /** Small wasps per pest on the traps of 16 days. */
  waspsPerPest: number;
  lastCountMs?: number;
  lastCatch?: number;
  everSeen: boolean;
  /** Signs of parasitism among scales or aphids in the last 28 days. */
  parasitised?: { signs: number; of: number };
}

const signOf: Record<PestId, { sign: LeafKind; host: LeafKind }> = {
  'trialeurodes-vaporariorum': { sign: 'black-scale', host: 'whitefly-scale' },
  'myzus-persicae': { sign: 'mummy', host: 'aphid' },
  'aphis-gossypii': { sign: 'mummy', host: 'aphid' },
};

/** Middle of a band, or the number itself. */
export const middle = (counted: Counted): number =>
  typeof counted === 'number' ? counted : (counted.low + counted.high) / 2;

export function evidence(season: Season, pest: PestId, asOfMs: number): Evidence {
  const kind = trapKindOf(pest);
  const within = (time: string, days: number) => {
    const ageMs = asOfMs - Date.parse(time);
    return ageMs >= 0 && ageMs < days * dayMs;
  };
  const counts = season.trapCounts.filter(
    (c) => c.counts[kind] !== undefined && Date.parse(c.time) <= asOfMs,
  );
  const recent = counts.filter((c) => within(c.time, 16));
  const caught = sum(recent.map((c) => middle(c.counts[kind] ?? 0)));
  const wasps = sum(recent.map((c) => middle(c.counts['small-wasp'] ?? 0)));
  const trapWeeks = sum(recent.map((c) => (c.exposureDays * c.countedFraction) / 7));
  const checks = season.leafChecks.filter((c) => Date.parse(c.time) <= asOfMs);
  const onLeaf = (check: (typeof checks)[number], kinds: readonly LeafKind[]) =>
    sum(
      check.seen.filter((s) => kinds.includes(s.kind)).map((s) => middle(s.total ?? s.infestedLeaves ?? 0)),
    );
  const sightings = [
    ...counts.map((c) => ({ time: c.time, number: middle(c.counts[kind] ?? 0) })),
    ...checks.map((c) => ({ time: c.time, number: onLeaf(c, leafKindsOf(pest)) })),
  ].filter((s) => s.number > 0);
  const last = counts.reduce<(typeof counts)[number] | undefined>(
    (newest, c) => (newest === undefined || Date.parse(c.time) >= Date.parse(newest.time) ? c : newest),
    undefined,
  );
  const signs = sum(checks.filter((c) => within(c.time, 28)).map((c) => onLeaf(c, [signOf[pest].sign])));
  const hosts = sum(checks.filter((c) => within(c.time, 28)).map((c) => onLeaf(c, [signOf[pest].host])));
  return {
    countedTraps: recent.length,
    ...(trapWeeks > 0 ? { catchPerTrapWeek: caught / trapWeeks } : {}),
    daysSeen: new Set(sightings.filter((s) => within(s.time, 28)).map((s) => s.time.slice(0, 10))).size,
    onLeaves: sum(checks.filter((c) => within(c.time, 16)).map((c) => onLeaf(c, leafKindsOf(pest)))),
    waspsPerPest: caught > 0 ? wasps / caught : 0,
    ...(last ? { lastCountMs: Date.parse(last.time), lastCatch: middle(last.counts[kind] ?? 0) } : {}),
    everSeen: sightings.length > 0,
    ...(signs + hosts > 0 ? { parasitised: { signs, of: signs + hosts } } : {}),
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
