/** Who meets whom: a wasp's attacks stage by stage, what is put in, and pests that leave for the winter. */
import { describe, expect, it } from 'vitest';
import { adultsIn } from '../../services/model/population/adults.ts';
import { growTo, inStage, takeFromStages } from '../../services/model/population/cohorts.ts';
import { gridPosition, type HourlyPath } from '../../services/model/population/dayTables.ts';
import { addReleased, startEnemy } from '../../services/model/population/enemy.ts';
import { huntDay, prepareHunt, takeHalf } from '../../services/model/population/hunt.ts';
import { escapeK } from '../../services/model/population/judgements.ts';
import { startPest } from '../../services/model/population/pest.ts';
import { createWorld, type World } from '../../services/model/population/world.ts';
import type { EnemyId, PestId, Release } from '../../services/model/season.ts';
import { speciesById } from '../../services/model/species/catalogue.ts';
import { constantPath, courseIn, houseAt, middleMember } from './house.ts';

const noonOf = (day: number) => new Date((day + 0.5) * 86_400_000).toISOString();
const releaseOf = (enemy: EnemyId, form: string, number: number): Release => ({
  id: enemy,
  enemy,
  form,
  number,
  time: noonOf(2),
  aliveShare: 1,
});
const enemyIn = (world: World, id: EnemyId) => world.enemies.find((enemy) => enemy.id === id)!;

describe('a wasp that lays and feeds', () => {
  const world = houseAt('trialeurodes-vaporariorum', 22, 40, {
    releases: [releaseOf('encarsia-formosa', 'pupa on card', 60)],
  });
  const { attacks } = enemyIn(world, 'encarsia-formosa').at!;
  const { stages } = world.pests[0]!.table;
  const on = (name: string) =>
    attacks.filter((attack) => attack.stages.some((i) => stages[i]?.name === name));

  it('meets each stage in one way: 2 a day on those it only feeds on, 12 on those it also lays into', () => {
    // The record: 10 eggs and 2 meals a day; half as eager for N2 (0.4 of the eggs, all of the meals).
    expect(on('N1')).toEqual([expect.objectContaining({ ceilingPerDay: 2, laidShare: 0, preference: 1 })]);
    expect(on('N2')).toEqual([expect.objectContaining({ ceilingPerDay: 12, preference: 0.5 })]);
    expect(on('N2')[0]!.laidShare).toBeCloseTo(4 / 6, 12);
    expect(on('N3')).toEqual([expect.objectContaining({ ceilingPerDay: 12, preference: 1 })]);
    expect(on('N3')[0]!.laidShare).toBeCloseTo(10 / 12, 12);
    expect(on('egg')).toEqual([]);
  });

  it('leaves (1 + h / k)^-k of the hosts it lays into and feeds on: they escape once, not from either', () => {
    const member = middleMember(world);
    const pest = startPest(world.pests[0]!, { ...member.pests[0]!, startingPerM2: 1e-6 }, 40);
    const at = world.enemies.findIndex(({ id }) => id === 'encarsia-formosa');
    const wasps = startEnemy(world.enemies[at]!, { searchM2PerDay: 3, establishes: 1 }, 40)!;
    wasps.boxes[0] = 1;
    const third = stages.findIndex(({ name }) => name === 'N3');
    const before = inStage(pest.cohorts, third);
    const states = world.enemies.map((_, i) => (i === at ? wasps : undefined));
    // One wasp a m2, fully active at 22 degC; of 20 the search would be half.
    const hazard = 3 / (1 + 1 / 20);
    const left = (1 + hazard / escapeK) ** -escapeK;
    expect(left).toBeLessThan(0.25);
    const hunt = prepareHunt([pest], states);
    huntDay(hunt, 5, gridPosition(0), false);
    const hosts = () => inStage(pest.cohorts, third) / before;
    const hidden = () => inStage(wasps.cohorts, 0);
    takeHalf(hunt);
    expect(hosts()).toBeCloseTo(Math.sqrt(left), 5);
    // What was laid into holds a wasp at once, no more and no less, and of hosts lost meanwhile nothing is laid into.
    const laidFirst = hidden();
    expect(laidFirst).toBeGreaterThan(0);
    takeFromStages(pest.cohorts, new Float64Array(stages.length).fill(0.5));
    takeHalf(hunt);
    expect(hosts()).toBeCloseTo(left / 2, 5);
    // As many again as were left, of N3 and, less hunted, of N2.
    const again = (hidden() - laidFirst) / laidFirst;
    expect(again).toBeGreaterThan(Math.sqrt(left) / 2);
    expect(again).toBeLessThan(1 / 2);
  });
});

describe('what is put in', () => {
  const added = (enemy: EnemyId, form: string, pest: PestId) => {
    const { at } = enemyIn(houseAt(pest, 22, 40, { releases: [releaseOf(enemy, form, 100)] }), enemy);
    const sum = (column: Float64Array) => column.reduce((all, each) => all + 10 * each, 0);
    return { adults: sum(at!.adultsAdded), young: sum(at!.youngAdded) };
  };

  it('all wasps that settle emerge, none before they are put in at noon', () => {
    const world = houseAt('trialeurodes-vaporariorum', 22, 40, {
      releases: [releaseOf('encarsia-formosa', 'pupa on card', 100)],
    });
    const wasps = startEnemy(
      enemyIn(world, 'encarsia-formosa'),
      { searchM2PerDay: 0, establishes: 0.5 },
      40,
    )!;
    addReleased(wasps, 2, gridPosition(0));
    const { femaleShare } = wasps.world.traits.adult;
    // Of 5 a m2 who settle, those who emerge in the first afternoon, and the others.
    const first = adultsIn(wasps.boxes) / femaleShare;
    expect(first).toBeGreaterThan(0.05);
    expect(first).toBeLessThan(0.5);
    expect(first + growTo(wasps.cohorts, wasps.cohorts.clock + 3)).toBeCloseTo(5, 2);
  });

  it('adults count their females, mixed stages are half young, larvae and pupae all', () => {
    const share = (id: EnemyId) => {
      const { traits } = speciesById(id);
      return traits.kind === 'enemy' ? traits.adult.femaleShare : Number.NaN;
    };
    const delphastus = added('delphastus-catalinae', 'adults', 'trialeurodes-vaporariorum');
    expect(delphastus.adults).toBeCloseTo(100 * share('delphastus-catalinae'), 9);
    const swirskii = added('amblyseius-swirskii', 'mixed stages in sachets', 'trialeurodes-vaporariorum');
    expect(swirskii.young).toBeCloseTo(50, 9);
    expect(swirskii.adults).toBeCloseTo(50 * share('amblyseius-swirskii'), 9);
    expect(added('adalia-bipunctata', 'larvae', 'aphis-gossypii')).toEqual({ adults: 0, young: 100 });
  });
});

describe('spider mites', () => {
  const days = 90;
  const path = (dayLengthH: (day: number) => number, longestDayH: number): HourlyPath => ({
    ...constantPath(24, days),
    dayLengthH: Float64Array.from({ length: days }, (_, day) => dayLengthH(day)),
    longestDayH,
  });
  const grownUnder = (dayLengthH: (day: number) => number, longestDayH = 16.5) => {
    const course = {
      startMs: 0,
      areaM2: 10,
      path: path(dayLengthH, longestDayH),
      releases: [],
      treatments: [],
    };
    const world = createWorld(['tetranychus-urticae'], course);
    return courseIn(world, middleMember(world)).adults[days - 1]!;
  };

  it('leave the leaves when days shorten below 13.75 hours (13.5 to 14: Ferguson 2009), not in spring', () => {
    const summer = grownUnder(() => 16);
    expect(grownUnder((day) => 11 + day / 30)).toBe(summer);
    expect(grownUnder((day) => 13.8 + (90 - day) / 45)).toBe(summer);
    expect(grownUnder((day) => 15 - day / 30)).toBeLessThan(summer / 10);
  });

  it('never rest where summer days are hardly longer: at 20 degrees of latitude the longest has 13.3 hours', () => {
    const summer = grownUnder(() => 13.3, 13.3);
    expect(grownUnder((day) => 13.3 - day / 60, 13.3)).toBe(summer);
  });
});
