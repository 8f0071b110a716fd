/** Who meets whom: a wasp's attacks stage by stage, what is put in, and pests that leave for the winter. */
import { describe, expect, it } from 'vitest';
import type { HourlyPath } from '../../services/model/population/dayTables.ts';
import { evenHazard, shareTaken } from '../../services/model/population/functionalResponse.ts';
import { escapeK } from '../../services/model/population/judgements.ts';
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

  it('leaves as many hosts unharmed as one attack of the same hazard would: (1 + 2 / k)^-k', () => {
    expect(shareTaken(evenHazard(2, escapeK))).toBeCloseTo(1 - (1 + 2 / escapeK) ** -escapeK, 12);
  });
});

describe('what is put in', () => {
  const added = (enemy: EnemyId, form: string, pest: PestId) => {
    const { at } = enemyIn(houseAt(pest, 22, 40, { releases: [releaseOf(enemy, form, 100)] }), enemy);
    const sum = (column: Float64Array) => column.reduce((all, each) => all + 10 * each, 0);
    return { adults: sum(at!.adultsAdded), young: sum(at!.youngAdded) };
  };

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
  const path = (dayLengthH: (day: number) => number): HourlyPath => ({
    ...constantPath(24, days),
    dayLengthH: Float64Array.from({ length: days }, (_, day) => dayLengthH(day)),
  });
  const grownUnder = (dayLengthH: (day: number) => number) => {
    const course = { startMs: 0, areaM2: 10, path: path(dayLengthH), releases: [], treatments: [] };
    const world = createWorld(['tetranychus-urticae'], course);
    return courseIn(world, middleMember(world)).adults[days - 1]!;
  };

  it('leave the leaves when days shorten below 13.75 hours (13.5 to 14: Ferguson 2009), not in spring', () => {
    const summer = grownUnder(() => 16);
    expect(grownUnder((day) => 11 + day / 30)).toBe(summer);
    expect(grownUnder((day) => 16 - day / 90)).toBe(summer);
    expect(grownUnder((day) => 15 - day / 30)).toBeLessThan(summer / 10);
  });
});
