/** A season carried on from a day is the season run whole, bit for bit. */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../services/model/numerics/random.ts';
import { carryOn, simulate, standAt } from '../../services/model/population/simulate.ts';
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

/** Warm and cool days in turn, so that no two days are alike. */
const random = seeded(1);
const path = {
  hourlyC: Float64Array.from({ length: 24 * days }, (_, hour) => 20 + 6 * Math.sin(hour / 4) + 4 * random()),
  daylight: Uint8Array.from({ length: 24 * days }, (_, hour) => (hour % 24 >= 5 && hour % 24 < 20 ? 1 : 0)),
};
const made = {
  releases: [
    release('encarsia-formosa', 'pupa on card', 12),
    release('amblyseius-swirskii', 'mixed stages in sachets', 25),
  ],
  treatments: [spray('pyrethrins', 6), spray('neem', 31)],
};
const worldOf = (pest: PestId): World =>
  createWorld([pest], { startMs: 0, areaM2: 10, path, ...made, cards: new Float64Array(days).fill(2) });
const member = (world: World) =>
  middleMember(world, {
    startingPerM2: 3,
    crowdingPerM2: 400,
    goneBelowPerM2: 0.1,
    arrivalDay: 20,
    arrivingPerM2: 2,
    immigrantsPerDay: 0.05,
    qM2PerDay: 0.2,
  });
const pests = ['trialeurodes-vaporariorum', 'frankliniella-occidentalis'] as const;

const later: [string, Parameters<typeof withInterventions>][] = pests.flatMap((pest) => {
  const world = worldOf(pest);
  const { releases, treatments } = made;
  const more = [
    release('encarsia-formosa', 'pupa on card', 36),
    release('delphastus-catalinae', 'adults', today),
    release('amblyseius-swirskii', 'mixed stages in sachets', 45),
    release('orius-laevigatus', 'adults and nymphs', 50),
  ];
  const ways: [string, Parameters<typeof withInterventions>][] = [
    [`${pest}, nothing more`, [world, releases, treatments]],
    [`${pest}, four enemies`, [world, [...releases, ...more], treatments]],
    [`${pest}, a wash`, [world, releases, [...treatments, spray('soap', today)]]],
    [`${pest}, both`, [world, [...releases, ...more], [...treatments, spray('soap', 34)]]],
  ];
  return ways;
});

describe('a season carried on', () => {
  it.each(later)('%s', (_, [world, releases, treatments]) => {
    const standing = standAt(world, member(world), today, allDays(world));
    const other = withInterventions(world, releases, treatments);
    expect(sharesPast(world, other, today)).toBe(true);
    const whole = simulate(other, member(other), days, allDays(other));
    // Twice, as what stands must not be touched by what goes on from it.
    for (const length of [days, days - 20]) {
      const carried = carryOn(standing, other, member(other), length, allDays(other));
      carried.pests.forEach((pest, i) => {
        for (const [key, column] of Object.entries(pest))
          expect(column, key).toEqual(whole.pests[i]![key as keyof typeof pest].slice(0, length));
      });
      carried.enemies.forEach((enemy, i) => {
        for (const [key, column] of Object.entries(enemy))
          expect(column, key).toEqual(whole.enemies[i]![key as keyof typeof enemy].slice(0, length));
      });
    }
  });

  it('takes no other past for its own', () => {
    const world = worldOf(pests[0]);
    const { releases, treatments } = made;
    const others = [
      withInterventions(world, releases.slice(1), treatments),
      withInterventions(world, [...releases, release('encarsia-formosa', 'pupa on card', 32)], treatments),
      withInterventions(world, [...releases, release('delphastus-catalinae', 'adults', 2)], treatments),
      withInterventions(world, releases, treatments.slice(0, 1)),
      withInterventions(world, releases, [...treatments, spray('soap', 32)]),
    ];
    expect(others.map((other) => sharesPast(world, other, today))).toEqual(others.map(() => false));
  });
});
