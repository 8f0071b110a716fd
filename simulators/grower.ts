/** A grower's eye and habits: from what is really on cards and leaves to what gets written down. */
import type { Counted, LeafCheck, TrapCount } from '../services/model/index.ts';
import type { Kind } from './biology.ts';
import { emptyCard, type Garden, leavesPerPlant } from './garden.ts';
import { countByPlant, type Insect, isAdult } from './insects.ts';
import { chance, clumped, poisson, type Random, roundAtRandom, wholeNumber } from './random.ts';

const dayMs = 86_400_000;
const bands = [
  [0, 0],
  [1, 5],
  [6, 20],
  [21, 50],
  [51, 100],
  [101, 1000],
] as const;

export interface Round {
  /** When the cards were last new. */
  cardsSinceMs: number;
  forgotten: number;
}

/**
 * The weekly round. In a forgotten week nothing is written and the cards hang on, so the next count
 * covers two weeks.
 */
export function weeklyRound(
  garden: Garden,
  round: Round,
  random: Random,
): { counts: TrapCount[]; leaves: LeafCheck[] } {
  const habits = garden.scenario.grower;
  if (chance(random, habits.forgets)) {
    round.forgotten += 1;
    return { counts: [], leaves: [] };
  }
  const exposureDays = (garden.timeMs - round.cardsSinceMs) / dayMs;
  const counts = garden.scenario.traps.map((trap, index) => {
    const fraction = chance(random, habits.hurried) ? habits.hurriedFraction : 1;
    const wrong = poisson(random, (habits.wrongInsects * exposureDays) / 7);
    const card = garden.cards[index]!;
    return countCard(
      garden,
      trap.id,
      { ...card, whitefly: card.whitefly + wrong },
      exposureDays,
      fraction,
      random,
    );
  });
  garden.cards = garden.scenario.traps.map(emptyCard);
  round.cardsSinceMs = garden.timeMs;
  const leaves = habits.leavesLookedAt === 0 ? [] : [checkLeaves(garden, habits.leavesLookedAt, random)];
  return { counts, leaves };
}

function countCard(
  garden: Garden,
  trapId: string,
  card: Record<Kind, number>,
  exposureDays: number,
  countedFraction: number,
  random: Random,
): TrapCount {
  const seen = (number: number): Counted => {
    const inPart = countedFraction === 1 ? number : roundAtRandom(random, number * countedFraction);
    return garden.scenario.grower.bands ? asBand(inPart) : inPart;
  };
  return {
    id: `count-${day(garden.timeMs)}-${trapId}`,
    trapId,
    time: new Date(garden.timeMs).toISOString(),
    exposureDays,
    countedFraction,
    card: 'new',
    counts: {
      whitefly: seen(card.whitefly),
      aphid: seen(card.aphid),
      ...(card.encarsia > 0 ? { 'small-wasp': seen(card.encarsia) } : {}),
    },
  };
}

function asBand(number: number): Counted {
  const [low, high] = bands.find(([, top]) => number <= top) ?? bands[bands.length - 1]!;
  return { low, high };
}

/** Looks under leaves of random plants; insects sit in clumps, and one in three is overlooked. */
function checkLeaves(garden: Garden, leaves: number, random: Random): LeafCheck {
  const { whitefly, aphid, swirskii, encarsia } = garden.colonies;
  const plants = Array.from({ length: leaves }, () => wholeNumber(random, garden.plants));
  const look = (colony: typeof whitefly, which: (insect: Insect) => boolean) => {
    const onPlant = countByPlant(colony, garden.plants, which);
    const found = plants.map((plant) =>
      clumped(random, (0.67 * onPlant[plant]! * colony.weight) / leavesPerPlant, 0.8),
    );
    return {
      infestedLeaves: found.filter((number) => number > 0).length,
      total: found.reduce((sum, number) => sum + number, 0),
    };
  };
  const blackScales = look(encarsia, (insect) => insect.stage === 1);
  const mites = look(swirskii, (insect) => insect.stage > 0);
  return {
    id: `leaves-${day(garden.timeMs)}`,
    time: new Date(garden.timeMs).toISOString(),
    leaves,
    seen: [
      { kind: 'whitefly-adult', ...look(whitefly, (insect) => isAdult(whitefly, insect)) },
      {
        kind: 'whitefly-scale',
        ...look(whitefly, (insect) => insect.stage >= 2 && !isAdult(whitefly, insect)),
      },
      { kind: 'aphid', ...look(aphid, () => true) },
      ...(blackScales.total > 0 ? [{ kind: 'black-scale' as const, ...blackScales }] : []),
      ...(mites.total > 0 ? [{ kind: 'predatory-mite' as const, ...mites }] : []),
    ],
  };
}

const day = (timeMs: number) => new Date(timeMs).toISOString().slice(0, 10);
