/** A season carried on from a day is the season run whole, bit for bit. */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../services/model/numerics/random.ts';
import {
  carryOn,
  type MemberParameters,
  simulate,
  standAt,
} from '../../services/model/population/simulate.ts';
import { sharesPast } from '../../services/model/population/standing.ts';
import { createWorld, type World, withInterventions } from '../../services/model/population/world.ts';
import type { EnemyId, PestId, Release, Treatment } from '../../services/model/season.ts';
import { allDays, middleMember } from './house.ts';

const dayMs = 86_400_000;
const [days, today] = [70, 33];
const time = (day: number) => new Date((day + 0.4) * dayMs).toISOString();
const release = (enemy: EnemyId, form: string, day: number): Release => ({
  id: `${enemy}-${day}`,
  enemy,
  form,
  number: 80,
  time: time(day),
  aliveShare: 0.9,
});
const spray = (kind: Treatment['kind'], day: number): Treatment => ({
  id: `${kind}-${day}`,
  kind,
  time: time(day),
  coveredShare: 0.8,
});

/** Warm and cool hours, no two days alike. */
const random = seeded(1);
const path = {
  hourlyC: Float64Array.from({ length: 24 * days }, (_, hour) => 20 + 6 * Math.sin(hour / 4) + 4 * random()),
  daylight: Uint8Array.from({ length: 24 * days }, (_, hour) => (hour % 24 >= 5 && hour % 24 < 20 ? 1 : 0)),
};
const made = {
  releases: [
    release('encarsia-formosa', 'pupa on card', 12),
    release('amblyseius-swirskii', 'mixed stages in sachets', 25),
    release('phytoseiulus-persimilis', 'adults', 28),
    release('macrolophus-pygmaeus', 'adults', today),
  ],
  treatments: [spray('pyrethrins', 6), spray('neem', 31)],
};
const cards = new Float64Array(days).fill(2);
const ants = Uint8Array.from({ length: days }, (_, day) => (day % 3) & 1);
const worldOf = (...pests: PestId[]): World =>
  createWorld(pests, { startMs: 0, areaM2: 10, path, ...made, cards, ants });

function member(world: World): MemberParameters {
  const middle = middleMember(world, {
    startingPerM2: 3,
    crowdingPerM2: 400,
    goneBelowPerM2: 0.1,
    arrivalDay: 20,
    arrivingPerM2: 2,
    immigrantsPerDay: 0.05,
    qM2PerDay: 0.2,
  });
  const coming = { fromDay: 15, perM2AndDay: 0.02 };
  return {
    ...middle,
    enemies: middle.enemies.map((enemy, i) => (world.enemies[i]!.comes ? { ...enemy, coming } : enemy)),
  };
}

const more = [
  release('encarsia-formosa', 'pupa on card', 36),
  release('delphastus-catalinae', 'adults', today),
  release('amblyseius-swirskii', 'mixed stages in sachets', 45),
  release('orius-laevigatus', 'adults and nymphs', 50),
  release('aphidius-colemani', 'mummies', 40),
];
const worlds: [string, World][] = [
  ['whitefly', worldOf('trialeurodes-vaporariorum')],
  ['thrips', worldOf('frankliniella-occidentalis')],
  ['spider mites', worldOf('tetranychus-urticae')],
  ['aphids with wild wasps and ants', worldOf('aphis-gossypii')],
  ['whitefly and thrips', worldOf('trialeurodes-vaporariorum', 'frankliniella-occidentalis')],
];
const fails = (world: World, failsFrom: number): World => ({
  ...world,
  enemies: world.enemies.map((enemy) => ({ ...enemy, failsFrom })),
});
const { releases, treatments } = made;
const ways: [string, (world: World) => World][] = [
  ['nothing more', (world) => withInterventions(world, releases, treatments)],
  ['without the parcel of today', (world) => withInterventions(world, releases.slice(0, 3), treatments)],
  ['more enemies', (world) => withInterventions(world, [...releases, ...more], treatments)],
  ['a wash', (world) => withInterventions(world, releases, [...treatments, spray('soap', today)])],
  [
    'both, and all fail a week later',
    (world) =>
      fails(withInterventions(world, [...releases, ...more], [...treatments, spray('soap', 34)]), today + 7),
  ],
];
const cases = worlds.flatMap(([name, world]) =>
  ways.map(([way, made]) => [`${name}, ${way}`, world, made(world)] as const),
);

function expectCarriedAsWhole(world: World, other: World, of: (world: World) => MemberParameters) {
  const standing = standAt(world, of(world), today, allDays(world));
  const whole = simulate(other, of(other), days, allDays(other));
  // Twice, as what stands must not be touched by what goes on from it.
  for (const length of [days, days - 20]) {
    const carried = carryOn(standing, other, of(other), { days: length, wanted: allDays(other) });
    for (const kind of ['pests', 'enemies'] as const) {
      const expected = whole[kind].map((one) =>
        Object.fromEntries(Object.entries(one).map(([key, column]) => [key, column.slice(0, length)])),
      );
      expect(carried[kind]).toEqual(expected);
    }
  }
  return whole;
}

describe('a season carried on', () => {
  it.each(cases)('%s', (_, world, other) => {
    expect(sharesPast(world, other, today)).toBe(true);
    expectCarriedAsWhole(world, other, member);
  });

  it('the last of a pest goes on the first day as on any other', () => {
    const world = worldOf('trialeurodes-vaporariorum');
    const [before] = simulate(world, member(world), today, allDays(world)).pests;
    const goneBelowPerM2 = 0.9 * (before!.adults[today - 1]! + before!.young[today - 1]!);
    const other = withInterventions(world, releases, [...treatments, spray('oil', today)]);
    const [course] = expectCarriedAsWhole(world, other, (each) => {
      const middle = member(each);
      return { ...middle, pests: middle.pests.map((pest) => ({ ...pest, goneBelowPerM2 })) };
    }).pests;
    expect(course!.adults[today]).toBe(0);
  });

  it('takes no other past for its own', () => {
    const [, world] = worlds[0]!;
    const others = [
      withInterventions(world, releases.slice(1), treatments),
      withInterventions(world, [...releases, release('encarsia-formosa', 'pupa on card', 32)], treatments),
      withInterventions(world, [...releases, release('delphastus-catalinae', 'adults', 2)], treatments),
      withInterventions(world, releases, treatments.slice(0, 1)),
      withInterventions(world, releases, [...treatments, spray('soap', 32)]),
      fails(world, today - 1),
      worldOf('trialeurodes-vaporariorum'),
    ];
    expect(others.map((other) => sharesPast(world, other, today))).toEqual(others.map(() => false));
  });
});
