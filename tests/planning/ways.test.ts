import { describe, expect, it } from 'vitest';
import { decidingMembers, fewMembers } from '../../services/model/inference/overLimit.ts';
import { cropWorth, expectedLoss, gain, total } from '../../services/model/planning/loss.ts';
import { actOfChoice, isClearGain, type Weighed, weighWays } from '../../services/model/planning/ways.ts';
import { asOfMs, fixedFit, invented } from './season.ts';

const { place } = invented();
const enemies = ['encarsia-formosa', 'amblyseius-swirskii'] as const;
const facts = { pest: 'trialeurodes-vaporariorum', asOfMs } as const;
const ways = (chances: Parameters<typeof fixedFit>[0], season = invented()) =>
  weighWays(season, fixedFit(chances), facts, enemies).ways;

describe('loss', () => {
  const seasons = [
    { weeksOver: 0, damage: 0 },
    { weeksOver: 10, damage: 1 },
  ];

  it('is money alone while plants bear what sits on them', () => {
    expect(total(expectedLoss(place, [seasons[0]!], 30))).toBe(30);
  });

  it('takes 1 - 1/e of the crop at a damage of 1', () => {
    const { harm, weeksOver } = expectedLoss(place, seasons, 0);
    expect(harm).toBeCloseTo((cropWorth(place) * (1 - 1 / Math.E)) / 2, 10);
    expect(weeksOver).toBe(5);
  });

  it('compares two ways season by season', () => {
    const none = seasons.map(() => ({ weeksOver: 0, damage: 0 }));
    const saved = gain(place, { seasons: none, money: 20 }, { seasons, money: 0 });
    expect(saved.mean).toBeCloseTo(expectedLoss(place, seasons, 0).harm - 20, 10);
    expect(gain(place, { seasons, money: 0 }, { seasons, money: 0 })).toEqual({ mean: 0, standardError: 0 });
  });
});

describe('ways', () => {
  it('are sizes, dates, a wash and leaving it, the least loss first', () => {
    const all = ways({ left: 0.9, released: 0.1 });
    expect(all.map(({ way }) => way.id).sort()).toEqual(
      [
        'leave',
        'wash',
        ...enemies.flatMap((enemy) => [1, 2, 4].map((weeks) => `later-${enemy}-${weeks}`)),
        ...[60, 120, 240, 600].map((number) => `now-encarsia-formosa-${number}`),
        ...[600, 1200, 2400, 6000].map((number) => `now-amblyseius-swirskii-${number}`),
        'wash-then-encarsia-formosa-120',
      ].sort(),
    );
    const losses = all.map(({ way }) => way.expectedLoss);
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
    for (const { way } of all) expect(way.expectedLoss).toBeCloseTo(way.money + way.harm, 1);
  });

  it('are weighed again on more possible seasons where it is decided between them', () => {
    const fit = fixedFit({ left: 0.9, released: 0.1 });
    const asked: (number | undefined)[] = [];
    const counting: typeof fit = {
      ...fit,
      overLimit: (pest, more, members) => {
        asked.push(members);
        return fit.overLimit(pest, more, members);
      },
    };
    const { between } = weighWays(invented(), counting, facts, enemies);
    // The best parcel here is one of a usual size.
    expect(between.map(({ kind }) => kind).sort()).toEqual(['later', 'leave', 'now', 'wash', 'wash-then']);
    expect(asked.filter((members) => members === decidingMembers)).toHaveLength(between.length);
    expect(asked.filter((members) => members === fewMembers)).toHaveLength(2 * (1 + 3 + 3) + 2);
  });

  it('spare clearly only what is more than the error and a tenth of the money', () => {
    const all = ways({ left: 0.9, released: 0.1 });
    const of = (id: string) => all.find(({ way }) => way.id === id)!;
    expect(isClearGain(place, of('now-encarsia-formosa-120'), of('leave'))).toBe(true);
    expect(isClearGain(place, of('leave'), of('now-encarsia-formosa-120'))).toBe(false);
    expect(isClearGain(place, of('leave'), of('leave'))).toBe(false);
  });

  it('later are one for each day a parcel can come, named by how much later that is', () => {
    // By hand: parcels come on Wednesdays, the first on 20 May; home again on Thu 4 June, so the next ones on 10 and 17 June.
    const season = invented({}, { awayDays: [{ from: '2026-05-22', to: '2026-06-03' }] });
    const later = ways({ left: 0.9, released: 0.1 }, season)
      .filter(({ kind, plan }) => kind === 'later' && plan?.enemy === 'encarsia-formosa')
      .map(({ way }) => [way.plan?.arrivesOn, way.label])
      .sort();
    expect(later).toEqual([
      ['2026-06-10', '2 cards of Encarsia, 3 weeks later'],
      ['2026-06-17', '2 cards of Encarsia, 4 weeks later'],
    ]);
  });

  describe('what to do now with a parcel', () => {
    const sized = (id: string, number: number, money: number, damage: number): Weighed => {
      const usual = ways({ left: 0.9, released: 0.1 }).find(
        ({ way }) => way.id === 'now-encarsia-formosa-120',
      )!;
      const seasons = [damage, damage * 1.2].map((each) => ({ weeksOver: 0, damage: each }));
      return { ...usual, way: { ...usual.way, id }, plan: { ...usual.plan!, number }, seasons, money };
    };
    const usual = sized('usual', 120, 24, 0.1);
    const washed = (damage: number, number = 120, money = 26): Weighed => ({
      ...sized('washed', number, money, damage),
      kind: 'wash-then',
    });
    const act = (all: Weighed[], season = invented()) => actOfChoice(season, all, asOfMs).way.id;

    it('is the usual size where another is hardly better', () => {
      const nearTie = sized('half', 60, 15, 0.14);
      expect(isClearGain(place, nearTie, usual)).toBe(false);
      expect(act([nearTie, usual])).toBe('usual');
    });

    it('is another size that is better by more than twice the error', () => {
      expect(act([sized('twice', 240, 42, 0), usual])).toBe('twice');
      const spares = (numbers: number[], way: Weighed): Weighed => ({
        ...way,
        money: 0,
        seasons: numbers.map((money) => ({ weeksOver: 0, damage: -Math.log(1 - (100 - money) / 240) })),
      });
      const alike = spares(Array(10).fill(0), usual);
      const better = (errors: number) => {
        // Nine seasons of these and one of 10 more: the mean is `errors`, its error 1.
        const nine = errors - 1;
        return spares([...Array(9).fill(nine), nine + 10], sized('half', 60, 15, 0));
      };
      expect(isClearGain(place, better(1.5), alike)).toBe(true);
      expect(act([better(1.5), alike])).toBe('usual');
      expect(act([better(2.5), alike])).toBe('half');
    });

    it('is washed for where that clearly spares more than the soap costs', () => {
      // Of a crop worth 240: 0.04 less damage spares 8 or more for 2, 0.005 hardly 1.
      expect(act([washed(0.06), usual])).toBe('washed');
      expect(act([washed(0.095), usual])).toBe('usual');
    });

    it('is the same parcel washed for, not another size', () => {
      const half = { ...washed(0.05, 60, 14), way: { ...usual.way, id: 'half' } };
      expect(act([half, washed(0.06), usual])).toBe('washed');
    });

    it('is washed for on a day at home, a day before it is set out, and not twice in five days', () => {
      const treated = (time: string) =>
        invented({ treatments: [{ id: 'w', kind: 'soap', time, coveredShare: 0.8 }] });
      expect(act([washed(0.06), usual], treated('2026-05-09T08:00:00Z'))).toBe('usual');
      expect(act([washed(0.06), usual], treated('2026-05-08T08:00:00Z'))).toBe('washed');
      const away = invented({}, { awayDays: [{ from: '2026-05-13', to: '2026-05-14' }] });
      expect(act([washed(0.06), usual], away)).toBe('usual');
      const tomorrow = (way: Weighed) => ({ ...way, plan: { ...way.plan!, windowFrom: '2026-05-14' } });
      expect(act([tomorrow(washed(0.06)), tomorrow(usual)])).toBe('usual');
    });
  });

  it('cost an assumed price where none is entered', () => {
    const { supplier: _, ...unsupplied } = place;
    const season = { ...invented(), place: unsupplied };
    const encarsia = ways({ left: 0.9, released: 0.1 }, season).find(
      ({ way }) => way.id === 'now-encarsia-formosa-120',
    )!;
    expect(encarsia.money).toBeGreaterThan(6);
  });
});
