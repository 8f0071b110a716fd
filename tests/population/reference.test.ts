/**
 * The engine against the fine-step reference (reference.ts), and both under step halving. Daily hunts on whole cohorts
 * are an approximation; a person who counts once a week should not be able to see it: two days for a peak and a tenth
 * of it, three days for the fall to a tenth.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addBirths, growTo, noCohorts } from '../../services/model/population/cohorts.ts';
import type { HourlyPath } from '../../services/model/population/dayTables.ts';
import { standingShares } from '../../services/model/population/stages.ts';
import { createWorld, type World, withInterventions } from '../../services/model/population/world.ts';
import type { EnemyId, PestId, Release } from '../../services/model/season.ts';
import { constantPath, courseIn, houseAt, middleMember } from './house.ts';
import { referenceSeason } from './reference.ts';

const fine = { stepsPerDay: 12, speeds: 24 };

/** Eight real days in May, over and over (Koidra 2023, MIT; the notice stands in the file). */
function realDays(days: number): HourlyPath {
  const lines = readFileSync('tests/simulators/bleiswijk-may-2022.csv', 'utf8').trim().split('\n');
  const [head = '', ...rows] = lines.filter((line) => !line.startsWith('#'));
  const column = head.split(',').indexOf('insideC');
  const inside = rows.map((row) => Number(row.split(',')[column]));
  const path = constantPath(0, days);
  path.hourlyC.forEach((_, hour) => {
    path.hourlyC[hour] = inside[hour % inside.length]!;
  });
  return path;
}

const releaseOf = (enemy: EnemyId, form: string, number: number, day: number): Release => ({
  id: enemy,
  enemy,
  form,
  number,
  time: new Date(day * 86_400_000).toISOString(),
  aliveShare: 1,
});
const cards = (day: number) => releaseOf('encarsia-formosa', 'pupa on card', 60, day);
const sachets = (number: number) => releaseOf('amblyseius-swirskii', 'mixed stages in sachets', number, 20);
const mummies = releaseOf('aphidius-colemani', 'mummies in a tube', 10, 10);

interface Events {
  peak: number;
  peakDay: number;
  /** First day after it with less than a tenth. */
  tenthDay: number;
}

function eventsOf({ adults, young }: { adults: Float64Array; young: Float64Array }): Events {
  const all = adults.map((number, day) => number + young[day]!);
  const peak = Math.max(...all);
  const peakDay = all.indexOf(peak);
  return { peak, peakDay, tenthDay: all.findIndex((number, day) => day > peakDay && number < peak / 10) };
}

function both(world: World): [engine: Events, reference: Events] {
  // All search so well that the pest falls to a tenth: a hard case for daily steps.
  const enemies = world.enemies.map(() => ({ searchM2PerDay: 0.1, establishes: 0.7 }));
  const member = middleMember(world, { crowdingPerM2: 1000, enemies });
  return [eventsOf(courseIn(world, member)), eventsOf(referenceSeason(world, member, fine).pests[0]!)];
}

describe('the engine against fine steps', () => {
  const pests: PestId[] = ['trialeurodes-vaporariorum', 'myzus-persicae', 'aphis-gossypii'];
  it.each(pests)('%s alone on real days: less than a day apart after sixty', (pestId) => {
    const course = { startMs: 0, areaM2: 10, path: realDays(60), releases: [], treatments: [] };
    const world = createWorld([pestId], course);
    const member = middleMember(world);
    const engine = courseIn(world, member).adults;
    // Growth compounds the error of a step: twice as fine as for the events below. Daily means of births and development
    // do not know that both swing over the day: peach-potato aphids, that suffer at noon, are 0.7 of a day ahead.
    const reference = referenceSeason(world, member, { stepsPerDay: 24, speeds: 48 }).pests[0]!.adults;
    const growthPerDay = Math.log(reference[59]! / reference[39]!) / 20;
    expect(growthPerDay).toBeGreaterThan(0);
    expect(Math.abs(Math.log(engine[59]! / reference[59]!) / growthPerDay)).toBeLessThan(1);
  });

  const coupled: { name: string; pest: PestId; days: number; releases: Release[] }[] = [
    { name: 'Encarsia', pest: 'trialeurodes-vaporariorum', days: 120, releases: [cards(30)] },
    { name: 'Encarsia, late', pest: 'trialeurodes-vaporariorum', days: 150, releases: [cards(50)] },
    { name: 'swirskii mites', pest: 'trialeurodes-vaporariorum', days: 100, releases: [sachets(1000)] },
    { name: 'both', pest: 'trialeurodes-vaporariorum', days: 100, releases: [cards(30), sachets(1000)] },
    { name: 'Aphidius on melon aphid', pest: 'aphis-gossypii', days: 60, releases: [mummies] },
    { name: 'Aphidius on peach aphid', pest: 'myzus-persicae', days: 60, releases: [mummies] },
  ];
  it.each(coupled)('$name: the same peak and fall', ({ pest, days, releases }) => {
    const world = withInterventions(houseAt(pest, 22, days), releases, []);
    const [engine, reference] = both(world);
    expect(reference.tenthDay).toBeGreaterThan(0);
    expect(Math.abs(engine.peakDay - reference.peakDay)).toBeLessThanOrEqual(2);
    expect(Math.abs(engine.tenthDay - reference.tenthDay)).toBeLessThanOrEqual(3);
    expect(Math.abs(engine.peak / reference.peak - 1)).toBeLessThan(0.1);
  });
});

describe('step halving', () => {
  it('the reference is of first order: halving its step halves its error', () => {
    const world = houseAt('trialeurodes-vaporariorum', 22, 60);
    const at = (stepsPerDay: number) =>
      referenceSeason(world, middleMember(world), { stepsPerDay, speeds: 200 }).pests[0]!.young[59]!;
    const [coarse, middle, finest] = [at(2), at(4), at(8)];
    const ratio = (coarse! - middle!) / (middle! - finest!);
    expect(ratio).toBeGreaterThan(1.7);
    expect(ratio).toBeLessThan(2.4);
  });

  it('cohorts born in the middle of a step are of second order: a quarter of the error', () => {
    const { table } = houseAt('trialeurodes-vaporariorum', 20, 1).pests[0]!;
    // A slowly warming spring; births grow by a tenth a day. Both integrals are exact.
    const clockAt = (day: number) => (day * 5 + day * day * 0.08) / 381;
    const bornBy = (day: number) => Math.expm1(0.1 * day) / 0.1;
    const matured = (step: number) => {
      const steps = 64 / step;
      const cohorts = noCohorts(table, standingShares(table.stages, 1), steps);
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        const [from, to] = [i * step, (i + 1) * step];
        sum += growTo(cohorts, clockAt(to));
        addBirths(cohorts, (clockAt(from) + clockAt(to)) / 2, bornBy(to) - bornBy(from));
      }
      return sum;
    };
    const [four, two, one, exact] = [matured(4), matured(2), matured(1), matured(1 / 32)].map(Number);
    expect(exact).toBeGreaterThan(1);
    expect((four! - exact!) / (two! - exact!)).toBeGreaterThan(3.4);
    expect((four! - exact!) / (two! - exact!)).toBeLessThan(4.6);
    expect((two! - exact!) / (one! - exact!)).toBeGreaterThan(3.4);
    expect((two! - exact!) / (one! - exact!)).toBeLessThan(4.6);
  });
});
