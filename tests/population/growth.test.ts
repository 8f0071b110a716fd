/** Growth and direction of the whole population part. */
import { describe, expect, it } from 'vitest';
import type { PestId, Release, Treatment } from '../../services/model/season.ts';
import { courseIn, houseAt, middleMember } from './house.ts';

const final = (pest: PestId, temperatureC: number, days: number, more = {}) => {
  const world = houseAt(pest, temperatureC, days);
  return courseIn(world, middleMember(world, more));
};

const encarsia = (number: number): Release => ({
  id: 'r',
  enemy: 'encarsia-formosa',
  form: 'pupa on card',
  number,
  time: new Date(40 * 86_400_000).toISOString(),
  aliveShare: 1,
});

describe('the season of a member', () => {
  it('is earlier where it is warmer, below the best temperature', () => {
    const firstAdults = [14, 17, 20, 23, 26].map((temperatureC) => {
      const { adults, clock } = final('trialeurodes-vaporariorum', temperatureC, 150);
      return { adults: adults[149]!, day: clock.findIndex((c) => c >= 1) };
    });
    for (let i = 1; i < firstAdults.length; i++) {
      expect(firstAdults[i]!.day).toBeLessThan(firstAdults[i - 1]!.day);
    }
  });

  it('stays empty when nobody was there and nobody comes', () => {
    const out = final('trialeurodes-vaporariorum', 22, 60, { startingPerM2: 0 });
    expect(Math.max(...out.adults, ...out.young, ...out.flying)).toBe(0);
  });

  it('begins on the day of arrival, not before', () => {
    const out = final('trialeurodes-vaporariorum', 22, 40, {
      startingPerM2: 0,
      arrivalDay: 20,
      immigrantsPerDay: 0.1,
    });
    expect(out.adults[19]).toBe(0);
    expect(out.adults[20]).toBeGreaterThan(0);
  });

  it('nobody comes after the last day of arrivals', () => {
    const [going, ceased] = [Number.POSITIVE_INFINITY, 30].map((lastArrivalDay) =>
      final('trialeurodes-vaporariorum', 22, 45, {
        startingPerM2: 0,
        arrivalDay: 20,
        immigrantsPerDay: 0.1,
        lastArrivalDay,
      }),
    );
    expect(ceased!.adults.slice(0, 31)).toEqual(going!.adults.slice(0, 31));
    expect(ceased!.adults[31]).toBeLessThan(going!.adults[31]!);
  });

  it('loses to the cards what they catch, and nothing where none hang', () => {
    const adults = (cards: number) => {
      const world = houseAt('trialeurodes-vaporariorum', 22, 3, { cards: new Float64Array(3).fill(cards) });
      return courseIn(world, middleMember(world, { qM2PerDay: 0.24, eggsPerDay: 0 })).adults;
    };
    const lost = Array.from(adults(5), (number, day) => -Math.log(number / adults(0)[day]!));
    // 0.24 m2 a day each, five on 10 m2, in almost full flight.
    expect(lost[0]).toBeGreaterThan(0.11);
    expect(lost[0]).toBeLessThan(0.12);
    // Those not yet laying are spared, and join the others.
    expect(lost[2]! / lost[0]!).toBeGreaterThan(2.7);
    expect(lost[2]! / lost[0]!).toBeLessThan(3);
  });

  it('is gone for good once fewer are left than can be, and not where fractions may live on', () => {
    const fewerAndFewer = { eggsPerDay: 0, startingPerM2: 10 };
    const [fractions, whole] = [0, 0.5].map((goneBelowPerM2) =>
      final('trialeurodes-vaporariorum', 24, 200, { ...fewerAndFewer, goneBelowPerM2 }),
    );
    expect(fractions!.adults[199]).toBeGreaterThan(0);
    const end = whole!.adults.findIndex((adults, day) => day > 0 && adults === 0);
    expect(fractions!.adults[end]! + fractions!.young[end]!).toBeLessThan(0.5);
    expect(fractions!.adults[end - 1]! + fractions!.young[end - 1]!).toBeGreaterThanOrEqual(0.5);
    expect(Math.max(...whole!.adults.slice(end), ...whole!.young.slice(end))).toBe(0);
  });

  it('starts anew from those who come later', () => {
    const out = final('trialeurodes-vaporariorum', 24, 160, {
      eggsPerDay: 0,
      goneBelowPerM2: 0.5,
      arrivalDay: 130,
      arrivingPerM2: 2,
    });
    expect(out.adults[129]).toBe(0);
    expect(out.adults[131]).toBeGreaterThan(0);
  });

  it('levels off when crowded', () => {
    const out = final('trialeurodes-vaporariorum', 23, 260, { crowdingPerM2: 50 });
    expect(out.adults[259]! / out.adults[229]!).toBeLessThan(1.5);
    expect(out.adults[259]).toBeLessThan(2000);
  });

  it('suffers from heat above 33 degC', () => {
    const warm = final('trialeurodes-vaporariorum', 27, 30);
    const hot = final('trialeurodes-vaporariorum', 38, 30);
    expect(hot.adults[29]).toBeLessThan(0.01 * warm.adults[29]!);
  });

  it('keeps winged aphids a small part of the catchable until crowded', () => {
    const few = final('myzus-persicae', 18, 20, { crowdingPerM2: 1e9 });
    const crowded = final('myzus-persicae', 18, 20, { crowdingPerM2: 1 });
    expect(few.flying[19]! / few.adults[19]!).toBeLessThan(0.05);
    expect(crowded.flying[19]! / crowded.adults[19]!).toBeGreaterThan(0.1);
  });
});

describe('natural enemies and treatments', () => {
  const withWasps = (number: number) => {
    const world = houseAt('trialeurodes-vaporariorum', 23, 120, { releases: [encarsia(number)] });
    const member = middleMember(world, { crowdingPerM2: 300 });
    return courseIn(world, member);
  };

  it('more wasps leave fewer whitefly at the end', () => {
    const left = [1, 20, 60, 200].map((number) => withWasps(number).adults[119]!);
    for (let i = 1; i < left.length; i++) expect(left[i]).toBeLessThan(left[i - 1]!);
  });

  it('nothing changes before the release', () => {
    const none = final('trialeurodes-vaporariorum', 23, 120, { crowdingPerM2: 300 });
    expect(withWasps(60).adults.slice(0, 40)).toEqual(none.adults.slice(0, 40));
  });

  it('shows black scales after more than half of the wasps own clock, not before', () => {
    const index = houseAt('trialeurodes-vaporariorum', 23, 2).enemies.findIndex(
      (e) => e.id === 'encarsia-formosa',
    );
    const { visible, hidden } = withWasps(60).enemies[index]!;
    // 0.55 x 189 degree-days above 12.8 at 23 degC are 10.2 days; the cards themselves empty first.
    expect(hidden[46]).toBeGreaterThan(0);
    const freshlyBlack = visible.findIndex((density, day) => day > 46 && density > 0.5 * hidden[46]!);
    expect(freshlyBlack).toBeGreaterThan(48);
  });

  it('does no harm to whitefly in the cold: Encarsia does not hunt at 14 degC', () => {
    const run = (releases: Release[]) => {
      const world = houseAt('trialeurodes-vaporariorum', 14, 100, { releases });
      return courseIn(world).adults[99]!;
    };
    expect(run([encarsia(200)])).toBeCloseTo(run([]), 12);
  });

  it('swirskii mites eat whitefly eggs and young larvae', () => {
    const mites: Release = {
      ...encarsia(1000),
      enemy: 'amblyseius-swirskii',
      form: 'mixed stages in sachets',
    };
    const run = (releases: Release[]) => {
      const world = houseAt('trialeurodes-vaporariorum', 23, 120, { releases });
      return courseIn(world, middleMember(world, { crowdingPerM2: 300 })).adults[119]!;
    };
    expect(run([mites])).toBeLessThan(0.8 * run([]));
  });

  it('ladybird larvae eat aphids of every age, and stop once they pupate', () => {
    const larvae: Release = {
      ...encarsia(300),
      enemy: 'adalia-bipunctata',
      form: 'larvae',
      time: new Date(0).toISOString(),
    };
    const run = (releases: Release[]) => {
      const world = houseAt('myzus-persicae', 18, 60, { releases });
      const index = world.enemies.findIndex((enemy) => enemy.id === 'adalia-bipunctata');
      const out = courseIn(world, middleMember(world, { startingPerM2: 20 }));
      return { adults: out.adults, larvae: out.enemies[index]!.hunters };
    };
    const [none, eaten] = [run([]), run([larvae])];
    expect(eaten.adults[12]).toBeLessThan(0.7 * none.adults[12]!);
    expect(eaten.larvae[0]).toBeGreaterThan(15);
    expect(eaten.larvae[50]).toBeLessThan(0.01);
  });

  it('soap takes some and the rest grow on', () => {
    const soap: Treatment = {
      id: 't',
      kind: 'soap',
      time: new Date(50.5 * 86_400_000).toISOString(),
      coveredShare: 0.8,
    };
    const run = (treatments: Treatment[]) => {
      const world = houseAt('trialeurodes-vaporariorum', 22, 100, { treatments });
      return courseIn(world);
    };
    const [none, washed] = [run([]), run([soap])];
    expect(washed.young[49]).toBe(none.young[49]);
    // 0.8 of the plants reached, 0.2 of eggs and 0.7 of other young taken there: between 16 and 56 %.
    expect(washed.young[50]! / none.young[50]!).toBeGreaterThan(0.44);
    expect(washed.young[50]! / none.young[50]!).toBeLessThan(0.84);
    expect(washed.adults[99]).toBeGreaterThan(0);
    expect(washed.adults[99]).toBeLessThan(none.adults[99]!);
  });
});
