/**
 * Everything uncertain about one pest in one house as a vector of independent standard normals, and the way from
 * such a vector to parameters. Medians and spreads with their reasons: docs/forecast.md, "The ensemble".
 */
import { normalQuantile } from '../numerics/distributions.ts';
import type { CountParameters } from '../observation/view.ts';
import type { MemberParameters } from '../population/simulate.ts';
import type { World } from '../population/world.ts';
import { normalCdf } from './normalCdf.ts';

export interface Layout {
  /** Length of the vector: population, then weekly disturbances, then what the counts show. */
  length: number;
  enemies: number;
  weeks: number;
  traps: number;
  weeksAt: number;
  shownAt: number;
  /** Never flies to traps but spreads from plant to plant: leaves with any tell less of its number. */
  patchy: boolean;
}

/** Places of the population part; natural enemies follow, two each. */
const at = {
  arrival: 0,
  startsWith: 1,
  startingNumber: 2,
  speed: 3,
  offset: 4,
  eggs: 5,
  survival: 6,
  life: 7,
  heat: 8,
  crowding: 9,
  immigrants: 10,
  wildDay: 11,
  wildNumber: 12,
  lasting: 13,
  last: 14,
  q: 15,
  enemies: 16,
} as const;
/** Places of the observation part, from `shownAt`; factors of single traps follow. */
const shownAt = { k: 0, background: 1, leaf: 2, leafK: 3, traps: 4 } as const;

/**
 * Births in a house against those in the laboratory where nobody compared them: aphids in houses and in the field grow
 * 1.3 to 1.5 times slower (references, pests.md), which takes half of the births; that others do too is a judgement.
 */
const birthsAssumed = 0.5;
const chanceNever = 0.2;
const arrivalMeanDay = 40;
const arrivalSdDays = 40;
const chanceAtStart = 0.3;
/** That the first to come later come at once on a bought plant, and not one by one: judgement. */
const chanceOnPlants = 0.3;
/** Insects in the whole house, for a house of any size: bought plants, open windows. */
const startingNumber = 5;
const immigrantsPerDay = 0.15;
/** Insects fly in waves of weeks; or a trickle lasts for the season. Judgements. */
const chanceTrickleLasts = 0.5;
const arrivalsLastDays = 40;
/** Wasps from outside come so long after their host, in this number a day in the whole house; or never. Judgements. */
const wildAfterDays = 25;
const wildPerDay = 0.15;
const chanceNoWild = 0.3;
/** Flying adults per m2 times days that give one insect on a trap: 0.02 a house's adult and day in trials on houses of about 12 m2. */
const qM2PerDay = 0.24;

/** Thirteen months and all weeks ahead: the same however long the season is by now, so that a later fit can go on from this one. */
const weeks = 87;

export function layoutOf(world: World, traps: number): Layout {
  const enemies = world.enemies.length;
  const weeksAt = at.enemies + 2 * enemies;
  const shown = weeksAt + weeks;
  return {
    length: shown + shownAt.traps + traps,
    enemies,
    weeks,
    traps,
    weeksAt,
    shownAt: shown,
    patchy: world.pests[0]!.traits.seen.trap === undefined,
  };
}

const logNormal = (median: number, sdOfLog: number, z: number) => median * Math.exp(sdOfLog * z);

/**
 * Parameters of the population of the one pest of the world and its enemies. `hostFactor` multiplies eggs;
 * `anomalyC[i]` is the member's own deviation on day `anomalyFromDay + i`.
 */
export function memberParameters(
  z: Float64Array,
  layout: Layout,
  world: World,
  ahead: { hostFactor: number; anomalyFromDay: number; anomalyC: Float64Array },
): MemberParameters {
  const offset = 0.7 * z[at.offset]!;
  const offsetC = new Float64Array(world.days).fill(offset);
  for (let day = ahead.anomalyFromDay; day < world.days; day++) {
    offsetC[day] = offset + (ahead.anomalyC[day - ahead.anomalyFromDay] ?? 0);
  }
  const way = normalCdf(z[at.startsWith]!);
  const first = arrivalDay(z[at.arrival]!);
  const brought = logNormal(startingNumber, 1, z[at.startingNumber]!) / world.areaM2;
  const { traits } = world.pests[0]!;
  const { eggsPerDay, birthsInHouses = birthsAssumed } = traits.adult;
  return {
    offsetC,
    pests: [
      {
        speed: logNormal(1, 0.08, z[at.speed]!),
        eggsPerDay: logNormal(eggsPerDay * ahead.hostFactor * birthsInHouses, 0.5, z[at.eggs]!),
        hazardFactor: logNormal(1, 0.3, z[at.survival]!),
        lifeFactor: logNormal(1, 0.3, z[at.life]!),
        heatFactor: logNormal(1, 0.8, z[at.heat]!),
        crowdingPerM2: logNormal(traits.crowdingPerM2, 1, z[at.crowding]!),
        arrivalDay: first,
        startingPerM2: way < chanceAtStart ? brought : 0,
        arrivingPerM2: way >= chanceAtStart && way < chanceAtStart + chanceOnPlants ? brought : 0,
        immigrantsPerDay: logNormal(immigrantsPerDay, 1.2, z[at.immigrants]!) / world.areaM2,
        lastArrivalDay: first + arrivalsLast(z[at.lasting]!),
        qM2PerDay: catchOf(z),
        goneBelowPerM2: lastOne(z[at.last]!) / world.areaM2,
        weeklyDisturbance: z.subarray(layout.weeksAt, layout.weeksAt + layout.weeks).map((g) => 0.25 * g),
      },
    ],
    enemies: world.enemies.map((enemy, i) => ({
      ...(enemy.comes && { coming: wildWasps(z, world.areaM2, way < chanceAtStart) }),
      searchM2PerDay: logNormal(enemy.traits.searchM2PerDay, 1.2, z[at.enemies + 2 * i]!),
      establishes: Math.min(
        1,
        logNormal(enemy.traits.release?.establishes ?? 1, 0.25, z[at.enemies + 2 * i + 1]!),
      ),
    })),
  };
}

/** From some weeks after the first of the pest on. */
function wildWasps(z: Float64Array, areaM2: number, pestFromStart: boolean) {
  const p = normalCdf(z[at.wildDay]!) / (1 - chanceNoWild);
  if (p >= 1) return { fromDay: Number.POSITIVE_INFINITY, perM2AndDay: 0 };
  const after = logNormal(wildAfterDays, 0.6, normalQuantile(Math.max(p, 1e-12)));
  const first = pestFromStart ? 0 : arrivalDay(z[at.arrival]!);
  return { fromDay: first + after, perM2AndDay: logNormal(wildPerDay, 1.2, z[at.wildNumber]!) / areaM2 };
}

/** Normal around day 40, or never; late arrivals lie next to never, so that moves pass between them. */
function arrivalDay(z: number): number {
  const p = normalCdf(z) / (1 - chanceNever);
  if (p >= 1) return Number.POSITIVE_INFINITY;
  return arrivalMeanDay + arrivalSdDays * normalQuantile(Math.max(p, 1e-12));
}

function arrivalsLast(z: number): number {
  const p = normalCdf(z) / (1 - chanceTrickleLasts);
  return p >= 1
    ? Number.POSITIVE_INFINITY
    : logNormal(arrivalsLastDays, 0.8, normalQuantile(Math.max(p, 1e-12)));
}

/** Where m are expected none is left with the chance exp(-m), the Poisson chance of none: m at which this member's last is gone. */
const lastOne = (z: number): number => -Math.log(Math.max(normalCdf(z), 1e-12));

/** Shared by the cards, which take what they catch, and by what is counted on them. */
const catchOf = (z: Float64Array): number => logNormal(qM2PerDay, 1, z[at.q]!);

/** What counts show of the population. */
export function shownParameters(z: Float64Array, layout: Layout): CountParameters {
  const from = layout.shownAt;
  const trapsAt = from + shownAt.traps;
  return {
    qM2PerDay: catchOf(z),
    k: logNormal(1.3, 0.4, z[from + shownAt.k]!),
    backgroundPerDay: logNormal(0.12 / 7, 0.7, z[from + shownAt.background]!),
    leafM2: logNormal(0.012, layout.patchy ? 2 : 1, z[from + shownAt.leaf]!),
    leafK: logNormal(3, layout.patchy ? 1 : 0.5, z[from + shownAt.leafK]!),
    trapFactor: z.subarray(trapsAt, trapsAt + layout.traps).map((factor) => Math.exp(0.3 * factor)),
  };
}
