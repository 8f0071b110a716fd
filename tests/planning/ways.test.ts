import { describe, expect, it } from 'vitest';
import { cropWorth, expectedLoss, gain, total } from '../../services/model/planning/loss.ts';
import {
  isClearGain,
  isWashFirst,
  parcelOfChoice,
  type Weighed,
  weighWays,
} from '../../services/model/planning/ways.ts';
import { asOfMs, fixedFit, invented } from './season.ts';

const { place } = invented();
const enemies = ['encarsia-formosa', 'amblyseius-swirskii'] as const;
const facts = { pest: 'trialeurodes-vaporariorum', asOfMs } as const;
const ways = (chances: Parameters<typeof fixedFit>[0], season = invented()) =>
  weighWays(season, fixedFit(chances), facts, enemies);

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
        ...enemies.flatMap((enemy) => [
          `release-${enemy}`,
          ...[1, 2, 4].map((weeks) => `later-${enemy}-${weeks}`),
          `wash-then-${enemy}`,
        ]),
        'release-encarsia-formosa-60',
        'release-encarsia-formosa-240',
        'release-encarsia-formosa-600',
        'release-amblyseius-swirskii-600',
        'release-amblyseius-swirskii-2400',
        'release-amblyseius-swirskii-6000',
      ].sort(),
    );
    const losses = all.map(({ way }) => way.expectedLoss);
    expect(losses).toEqual([...losses].sort((a, b) => a - b));
    for (const { way } of all) expect(way.expectedLoss).toBeCloseTo(way.money + way.harm, 1);
  });

  it('spare clearly only what is more than the error and a tenth of the money', () => {
    const all = ways({ left: 0.9, released: 0.1 });
    const of = (id: string) => all.find(({ way }) => way.id === id)!;
    expect(isClearGain(invented(), of('release-encarsia-formosa'), of('leave'))).toBe(true);
    expect(isClearGain(invented(), of('leave'), of('release-encarsia-formosa'))).toBe(false);
    expect(isClearGain(invented(), of('leave'), of('leave'))).toBe(false);
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

  describe('the parcel of choice', () => {
    const sized = (id: string, number: number, money: number, damage: number): Weighed => {
      const usual = ways({ left: 0.9, released: 0.1 }).find(
        ({ way }) => way.id === 'release-encarsia-formosa',
      )!;
      const seasons = [damage, damage * 1.2].map((each) => ({ weeksOver: 0, damage: each }));
      return { ...usual, way: { ...usual.way, id }, plan: { ...usual.plan!, number }, seasons, money };
    };
    const usual = sized('usual', 120, 24, 0.1);

    it('is of the usual size where another is hardly better', () => {
      const nearTie = sized('half', 60, 15, 0.14);
      expect(isClearGain(invented(), nearTie, usual)).toBe(false);
      expect(parcelOfChoice(invented(), [nearTie, usual]).way.id).toBe('usual');
    });

    it('is washed for only where that spares more than a tenth of all the money', () => {
      const washed = (damage: number): Weighed => ({
        ...sized('washed', 120, 26, damage),
        kind: 'wash-then',
      });
      // Of a crop worth 240: 0.04 less damage spares 8 or more for 2, 0.01 hardly more than the wash costs.
      expect(isWashFirst(invented(), asOfMs, usual, washed(0.06))).toBe(true);
      expect(isWashFirst(invented(), asOfMs, usual, washed(0.09))).toBe(false);
    });

    it('is washed for on a day at home, a day before it is set out, and not twice in five days', () => {
      const washed: Weighed = { ...sized('washed', 120, 26, 0.06), kind: 'wash-then' };
      const treated = (time: string) =>
        invented({ treatments: [{ id: 'w', kind: 'soap', time, coveredShare: 0.8 }] });
      expect(isWashFirst(treated('2026-05-09T08:00:00Z'), asOfMs, usual, washed)).toBe(false);
      expect(isWashFirst(treated('2026-05-08T08:00:00Z'), asOfMs, usual, washed)).toBe(true);
      const away = invented({}, { awayDays: [{ from: '2026-05-13', to: '2026-05-14' }] });
      expect(isWashFirst(away, asOfMs, usual, washed)).toBe(false);
      const tomorrow = { ...usual, plan: { ...usual.plan!, windowFrom: '2026-05-14' } };
      expect(isWashFirst(invented(), asOfMs, tomorrow, washed)).toBe(false);
    });

    it('is of another size that is clearly better', () => {
      const twice = sized('twice', 240, 42, 0);
      expect(parcelOfChoice(invented(), [twice, usual]).way.id).toBe('twice');
    });
  });

  it('cost an assumed price where none is entered', () => {
    const { supplier: _, ...unsupplied } = place;
    const season = { ...invented(), place: unsupplied };
    const encarsia = ways({ left: 0.9, released: 0.1 }, season).find(
      ({ way }) => way.id === 'release-encarsia-formosa',
    )!;
    expect(encarsia.money).toBeGreaterThan(6);
  });
});
