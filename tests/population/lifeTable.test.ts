/** The life table of a record against the forecast's own simulation, and against a hand-worked case. */
import { describe, expect, it } from 'vitest';
import { mostPerDay } from '../../services/model/population/attacks.ts';
import { dayValue, gridPosition } from '../../services/model/population/dayTables.ts';
import {
  addReleased,
  hunting,
  layIntoHosts,
  passEnemyDay,
  startEnemy,
} from '../../services/model/population/enemy.ts';
import { lifeTable } from '../../services/model/population/lifeTable.ts';
import { pestIds, type Release } from '../../services/model/season.ts';
import { speciesById } from '../../services/model/species/catalogue.ts';
import { courseIn, houseAt, middleMember } from './house.ts';

const days = 800;

/** Daily growth of a series over its last 200 days. */
const growth = (series: Float64Array) => Math.log(series[days - 1]! / series[days - 201]!) / 200;

describe('life table at constant temperature', () => {
  it.each(pestIds)('%s grows as in the simulation, at 15, 20 and 25 degC', (id) => {
    for (const temperatureC of [15, 20, 25]) {
      const world = houseAt(id, temperatureC, days);
      const member = middleMember(world, { startingPerM2: 1e-150, crowdingPerM2: 1e60 });
      const simulated = growth(courseIn(world, member).adults);
      const { growthPerDay } = lifeTable({ record: speciesById(id), temperatureC });
      expect(growthPerDay).toBeCloseTo(simulated, 4);
    }
  });

  it.each([
    ['encarsia-formosa', 'adults'],
    ['amblyseius-swirskii', 'adults'],
  ] as const)('%s grows as in the forecast among prey without end', (id, form) => {
    const time = new Date(0).toISOString();
    const released: Release = { id: 'r', enemy: id, form, number: 1e-90, time, aliveShare: 1 };
    const world = houseAt('trialeurodes-vaporariorum', 22, days, { releases: [released] });
    const own = world.enemies.find((enemy) => enemy.id === id)!;
    const enemy = startEnemy(own, { searchM2PerDay: 1, establishes: 1 }, days)!;
    const hunters = Float64Array.from({ length: days }, (_, day) => {
      passEnemyDay(enemy, day, gridPosition(0));
      addReleased(enemy, day, gridPosition(0));
      const activity = dayValue(enemy.at.activity, day, gridPosition(0));
      enemy.fill = 1;
      if (own.kind === 'parasitoid') {
        const most = mostPerDay(own.traits, 'parasitism', 'trialeurodes-vaporariorum');
        layIntoHosts(enemy, hunting(enemy) * activity * most);
      }
      return hunting(enemy);
    });
    const { growthPerDay } = lifeTable({ record: speciesById(id), temperatureC: 22 });
    expect(growthPerDay).toBeCloseTo(growth(hunters), 3);
  });

  it('solves the equation of Euler and Lotka: births discounted by r add up to 1', () => {
    const { births, growthPerDay } = lifeTable({ record: speciesById('myzus-persicae'), temperatureC: 18 });
    const discounted = births.reduce((sum, n, day) => sum + n * Math.exp(-growthPerDay! * day), 0);
    expect(discounted).toBeCloseTo(1, 9);
  });

  it('has nobody born below the threshold of development', () => {
    const { perGeneration, growthPerDay } = lifeTable({
      record: speciesById('trialeurodes-vaporariorum'),
      temperatureC: 8,
    });
    expect(perGeneration).toBe(0);
    expect(growthPerDay).toBeUndefined();
  });

  it('shrinks where a newborn leaves less than one: melon aphids at 32.5 degC', () => {
    const table = lifeTable({ record: speciesById('aphis-gossypii'), temperatureC: 32.5 });
    expect(table.perGeneration).toBeLessThan(1);
    expect(table.growthPerDay).toBeLessThan(0);
  });
});
