/** A grower's eye and habits: from what is really on cards and leaves to what gets written down. */
import type { Counted, LeafCheck, TrapCount } from '../services/model/index.ts';
import type { Kind } from './biology.ts';
import { emptyCard, onCardFor } from './cards.ts';
import type { Insect } from './colony.ts';
import { type Garden, leavesPerPlant } from './garden.ts';
import { chance, clumped, poisson, type Random, roundAtRandom, wholeNumber } from './random.ts';
import type { CardKind, LeafKind } from './truth.ts';

const dayMs = 86_400_000;
const weekMs = 7 * dayMs;
const bands = [
  [0, 0],
  [1, 5],
  [6, 20],
  [21, 50],
  [51, 100],
  [101, 1000],
] as const;

/** What of a card counts as what; wrong insects are taken for pests only. */
const onCard: Record<Exclude<CardKind, 'unknown'>, readonly Kind[]> = {
  whitefly: ['whitefly'],
  aphid: ['aphid', 'peachAphid'],
  thrips: ['thrips'],
  'small-wasp': ['encarsia', 'aphidius'],
};
const cardKinds = Object.keys(onCard) as (keyof typeof onCard)[];

/** What is seen under a leaf, from which stage on (and before which), and how clumped it sits. */
const underLeaf: { seen: LeafKind; kind: Kind; from: number; before: number; k: number; sign?: true }[] = [
  { seen: 'whitefly-adult', kind: 'whitefly', from: 5, before: 6, k: 0.8 },
  { seen: 'whitefly-scale', kind: 'whitefly', from: 2, before: 5, k: 0.6 },
  { seen: 'aphid', kind: 'aphid', from: 0, before: 5, k: 0.4 },
  { seen: 'aphid', kind: 'peachAphid', from: 0, before: 5, k: 0.4 },
  { seen: 'thrips', kind: 'thrips', from: 1, before: 5, k: 0.8 },
  { seen: 'spider-mite', kind: 'spiderMite', from: 1, before: 5, k: 0.3 },
  { seen: 'black-scale', kind: 'encarsia', from: 1, before: 2, k: 0.6, sign: true },
  { seen: 'mummy', kind: 'aphidius', from: 1, before: 2, k: 0.4, sign: true },
  { seen: 'ladybird-larva', kind: 'ladybird', from: 1, before: 2, k: 1, sign: true },
  ...(['swirskii', 'cucumeris', 'persimilis', 'californicus'] as const).map((kind) => ({
    seen: 'predatory-mite' as const,
    kind,
    from: 1,
    before: 3,
    k: 0.8,
    sign: true as const,
  })),
];
/** One in three is overlooked. */
const noticed = 0.67;

export interface Round {
  /** When the cards were last new. */
  cardsSinceMs: number;
}

/**
 * The weekly round. In a forgotten week nothing is written and the cards hang on, so the next count covers two weeks;
 * after weeks away the old cards count as lost.
 */
export function weeklyRound(
  garden: Garden,
  round: Round,
  random: Random,
): { counts: TrapCount[]; leaves: LeafCheck[] } {
  const habits = garden.scenario.grower;
  writeWeek(garden);
  const week = Math.round((garden.timeMs - garden.startMs) / weekMs);
  const [from, to] = habits.away ?? [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const forgotten = chance(random, habits.forgets);
  if (forgotten || (week >= from && week <= to)) return { counts: [], leaves: [] };
  const exposureDays = (garden.timeMs - round.cardsSinceMs) / dayMs;
  const counts = garden.scenario.traps.map((trap, index) => {
    const fraction = chance(random, habits.hurried) ? habits.hurriedFraction : 1;
    const lost = week === to + 1;
    return countCard(garden, { trapId: trap.id, index, exposureDays, fraction, lost }, random);
  });
  garden.cards.expected = garden.scenario.traps.map(emptyCard);
  round.cardsSinceMs = garden.timeMs;
  const leaves = habits.leavesLookedAt === 0 ? [] : [checkLeaves(garden, habits.leavesLookedAt, random)];
  return { counts, leaves };
}

interface Look {
  trapId: string;
  index: number;
  exposureDays: number;
  fraction: number;
  lost: boolean;
}

function countCard(garden: Garden, look: Look, random: Random): TrapCount {
  const { trapId, index, exposureDays, fraction, lost } = look;
  const { k, wrongPerWeek } = garden.cards;
  const seen = (kind: keyof typeof onCard): Counted => {
    const expected = onCard[kind].reduce((sum, one) => sum + garden.cards.expected[index]![one], 0);
    const caught = clumped(random, onCardFor(expected), k);
    const wrong = kind === 'small-wasp' ? 0 : poisson(random, (wrongPerWeek * exposureDays) / 7);
    const inPart = fraction === 1 ? caught + wrong : roundAtRandom(random, (caught + wrong) * fraction);
    return garden.scenario.grower.bands ? asBand(inPart) : inPart;
  };
  const all = cardKinds.map((kind) => [kind, seen(kind)] as const);
  return {
    id: `count-${day(garden.timeMs)}-${trapId}`,
    trapId,
    time: new Date(garden.timeMs).toISOString(),
    exposureDays,
    countedFraction: lost ? 1 : fraction,
    card: lost ? 'lost' : 'new',
    counts: lost
      ? {}
      : Object.fromEntries(all.filter(([kind, n]) => kind !== 'small-wasp' || (n !== 0 && !isNone(n)))),
  };
}

const isNone = (counted: Counted) => typeof counted === 'object' && counted.high === 0;

function asBand(number: number): Counted {
  const [low, high] = bands.find(([, top]) => number <= top) ?? bands[bands.length - 1]!;
  return { low, high };
}

/** Looks under leaves of random plants, where insects sit in clumps. */
function checkLeaves(garden: Garden, leaves: number, random: Random): LeafCheck {
  const plants = Array.from({ length: leaves }, () => wholeNumber(random, garden.plants));
  const found = new Map<LeafKind, number[]>();
  const signs = new Set<LeafKind>();
  for (const row of underLeaf) {
    const perLeaf = meanPerLeaf(garden, row);
    const before = found.get(row.seen) ?? new Array<number>(leaves).fill(0);
    const more = plants.map((plant, leaf) => before[leaf]! + clumped(random, perLeaf[plant]!, row.k));
    found.set(row.seen, more);
    if (row.sign) signs.add(row.seen);
  }
  const seen = [...found].map(([kind, numbers]) => ({
    kind,
    infestedLeaves: numbers.filter((number) => number > 0).length,
    total: Math.min(
      100_000,
      numbers.reduce((sum, number) => sum + number, 0),
    ),
  }));
  return {
    id: `leaves-${day(garden.timeMs)}`,
    time: new Date(garden.timeMs).toISOString(),
    leaves,
    seen: seen.filter(({ kind, total }) => total > 0 || !signs.has(kind)),
  };
}

/** Expected to be noticed under a leaf of each plant. */
function meanPerLeaf(garden: Garden, { kind, from, before }: (typeof underLeaf)[number]): number[] {
  const colony = garden.colonies[kind];
  const onPlant = new Array<number>(garden.plants).fill(0);
  const counts = ({ stage }: Insect) => stage >= from && stage < before;
  for (const insect of colony.insects) if (counts(insect)) onPlant[insect.plant]! += 1;
  return onPlant.map((entries) => (noticed * entries * colony.weight) / leavesPerPlant);
}

/** Sets down what a whole card hung for this week and a leaf looked at now are expected to show. */
function writeWeek(garden: Garden) {
  const { cards, truth, timeMs, scenario } = garden;
  scenario.traps.forEach(({ id }, index) => {
    const mean = Object.fromEntries(
      cardKinds.map((kind) => {
        const caught = onCard[kind].reduce((sum, one) => sum + cards.thisWeek[index]![one], 0);
        return [kind, onCardFor(caught) + (kind === 'small-wasp' ? 0 : cards.wrongPerWeek)];
      }),
    );
    truth.cards.push({ endMs: timeMs, trapId: id, mean });
  });
  cards.thisWeek = scenario.traps.map(emptyCard);
  const share: Partial<Record<LeafKind, number>> = {};
  for (const row of underLeaf) {
    // No insect of a negative binomial leaf: (1 + mean / k) ^ -k.
    const none = meanPerLeaf(garden, row).map((mean) => (1 + mean / row.k) ** -row.k);
    const infested = 1 - none.reduce((sum, p) => sum + p, 0) / garden.plants;
    share[row.seen] = 1 - (1 - (share[row.seen] ?? 0)) * (1 - infested);
  }
  truth.leaves.push({ endMs: timeMs, share });
}

const day = (timeMs: number) => new Date(timeMs).toISOString().slice(0, 10);
