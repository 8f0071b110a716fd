/** The degree-day ledger against sums done by hand. */
import { describe, expect, it } from 'vitest';
import type { TemperatureOutlook } from '../../services/model/climate/outlook.ts';
import type { TemperatureCurve } from '../../services/model/climate/temperatureCurve.ts';
import { ledger } from '../../services/model/ledger.ts';
import { ledgerEntry } from '../../services/model/outcome.ts';
import type { Season } from '../../services/model/season.ts';
import { day, hour, seasonOf, start, throughPoints } from '../climate/curves.ts';

const iso = (ms: number) => new Date(ms).toISOString();
const daysAfterStart = (text: string | undefined) => (Date.parse(text!) - start) / day;

/** Straight lines through (days from the start, degC). */
const through = (points: readonly (readonly [number, number])[]) =>
  throughPoints(points.map(([days, temperatureC]) => [(start + days * day) / hour, temperatureC]));

const constant = (temperatureC: number, days: number) =>
  through([
    [0, temperatureC],
    [days, temperatureC],
  ]);

/** Up and down between 4 and 32 °C every day. */
const sawTooth = (days: number) =>
  through(Array.from({ length: 2 * days + 1 }, (_, i) => [i / 2, i % 2 === 0 ? 4 : 32] as const));

/** The same temperature for 60 days; one row of anomalies a member. */
function outlookOf(
  asOfMs: number,
  temperatureC: number,
  anomalies: readonly number[] = [0],
): TemperatureOutlook {
  return {
    startMs: asOfMs,
    hourlyC: new Float64Array(60 * 24).fill(temperatureC),
    anomalyC: anomalies.map((anomaly) => new Float64Array(60).fill(anomaly)),
  };
}

function caughtAtStart(counts: Season['trapCounts'][number]['counts'] = { whitefly: 2 }): Season {
  const count = { id: 'c1', trapId: 'door', time: iso(start), exposureDays: 7, countedFraction: 1 };
  const season = seasonOf({ trapCounts: [{ ...count, card: 'new', counts }] });
  return { ...season, place: { ...season.place, pests: ['trialeurodes-vaporariorum', 'aphis-gossypii'] } };
}

function entriesOf(
  season: Season,
  curve: TemperatureCurve,
  asOfDays: number,
  aheadC: number,
  anomalies = [0],
) {
  const asOfMs = start + asOfDays * day;
  return ledger(season, curve, outlookOf(asOfMs, aheadC, anomalies), asOfMs);
}

describe('sums by hand', () => {
  // Between 4 and 32 °C the line spends equal time at every degree: per day the degrees above 8.3 are
  // (32 - 8.3)^2 / (2 x 28), less those above the cut-off of 30, (32 - 30)^2 / (2 x 28): 557.69 / 56 = 9.95875.
  it('a saw-tooth of 20 days gives 199.175 degree-days: egg 107, N1 47, N2 45.175 of 60', () => {
    const [first] = entriesOf(caughtAtStart(), sawTooth(20), 20, 20);
    expect(first!.soFarDegreeDays).toBeCloseTo(199.175, 2);
    expect(first!.stages.map((stage) => stage.state)).toEqual(['done', 'done', 'running', 'ahead', 'ahead']);
    expect(first!.stages.map((stage) => Number(stage.soFarDegreeDays.toFixed(2)))).toEqual([
      107, 47, 45.17, 0, 0,
    ]);
  });

  // 107 / 9.95875 = 10.74: the egg is done late on the eleventh day.
  it('on the saw-tooth the egg ends on the eleventh day', () => {
    const [first] = entriesOf(caughtAtStart(), sawTooth(20), 20, 20);
    const ended = daysAfterStart(first!.stages[0]!.ends?.q50);
    expect(ended).toBeGreaterThan(10);
    expect(ended).toBeLessThan(11);
  });

  // At 20.3 °C a day gives 12 degree-days: 107 / 12 = 8.91667 days.
  it('at a constant 20.3 °C the egg ends after 8.91667 days, all bounds equal', () => {
    const [first] = entriesOf(caughtAtStart(), constant(20.3, 20), 20, 20.3);
    const ends = first!.stages[0]!.ends!;
    expect(daysAfterStart(ends.q50)).toBeCloseTo(107 / 12, 4);
    expect(new Set(Object.values(ends)).size).toBe(1);
  });

  // 160 degree-days are behind after 13.3333 days. N2 ends at 214: 54 left, 4.5 days. Spread of three stages
  // sqrt(10.7^2 + 7.05^2 + 9^2) / 214 = 0.07317, with 0.08 for speed 0.10842; 1 of 10 is at exp(-1.28155 x 0.10842).
  it('the running stage ends in the middle after 4.5 days, for 1 of 10 after 2.19, for 9 of 10 after 7.16', () => {
    const asOfDays = 160 / 12;
    const [first] = entriesOf(caughtAtStart(), constant(20.3, asOfDays), asOfDays, 20.3);
    const ends = first!.stages[2]!.ends!;
    expect(daysAfterStart(ends.q50) - asOfDays).toBeCloseTo(4.5, 2);
    expect(daysAfterStart(ends.q10) - asOfDays).toBeCloseTo(
      (214 * Math.exp(-1.28155 * 0.10842) - 160) / 12,
      2,
    );
    expect(daysAfterStart(ends.q90) - asOfDays).toBeCloseTo(
      (214 * Math.exp(1.28155 * 0.10842) - 160) / 12,
      2,
    );
  });

  // A generation from egg to egg needs 381 + 17.6 degree-days: 33.2167 days at 12 a day.
  it('generations follow until one is ahead', () => {
    const entries = entriesOf(caughtAtStart(), constant(20.3, 40), 40, 20.3);
    expect(entries.map((entry) => entry.generation)).toEqual([1, 2, 3]);
    expect(entries.map((entry) => entry.startedBy)).toEqual([
      'first-catch',
      'previous-generation',
      'previous-generation',
    ]);
    expect(daysAfterStart(entries[1]!.startedAt)).toBeCloseTo(398.6 / 12, 4);
    expect(daysAfterStart(entries[2]!.startedAt)).toBeCloseTo((2 * 398.6) / 12, 1);
    expect(entries[0]!.stages.every((stage) => stage.state === 'done')).toBe(true);
    expect(entries[2]!.stages.every((stage) => stage.state === 'ahead')).toBe(true);
  });
});

describe('every entry', () => {
  const releases: Season['releases'] = (
    [
      ['encarsia-formosa', 'pupa on card'],
      ['amblyseius-swirskii', 'mixed stages in sachets'],
      ['adalia-bipunctata', 'larvae'],
    ] as const
  ).map(([enemy, form], i) => ({
    id: `r${i}`,
    enemy,
    form,
    number: 60,
    time: iso(start + 5 * day),
    aliveShare: 1,
  }));
  const season = { ...caughtAtStart({ whitefly: 3, aphid: { low: 1, high: 5 } }), releases };
  const entries = entriesOf(season, sawTooth(30), 30, 18, [-3, 0, 3]);

  it('is one of the contract, with an id of its own', () => {
    for (const entry of entries) expect(ledgerEntry.parse(entry)).toEqual(entry);
    expect(new Set(entries.map((entry) => entry.id)).size).toBe(entries.length);
  });

  it('adds up: stages to the whole, in what is needed and in what is so far', () => {
    for (const entry of entries) {
      const sum = (of: 'neededDegreeDays' | 'soFarDegreeDays') =>
        entry.stages.reduce((total, stage) => total + stage[of], 0);
      expect(sum('neededDegreeDays')).toBeCloseTo(entry.neededDegreeDays, 9);
      expect(sum('soFarDegreeDays')).toBeCloseTo(entry.soFarDegreeDays, 9);
    }
  });

  it('has its dates in order, from bound to bound and from stage to stage', () => {
    for (const { stages } of entries) {
      for (const { ends } of stages) {
        const bounds = [ends!.q025, ends!.q10, ends!.q25, ends!.q50, ends!.q75, ends!.q90, ends!.q975];
        expect([...bounds].sort()).toEqual(bounds);
      }
      for (const bound of ['q025', 'q50', 'q975'] as const) {
        const dates = stages.map((stage) => stage.ends![bound]);
        expect([...dates].sort()).toEqual(dates);
      }
    }
  });

  it('starts as released: half a pupa on the card, an egg for mixed stages, larvae without young', () => {
    const stagesOf = (id: string) => entries.find((entry) => entry.id === id)?.stages.map((s) => s.stage);
    expect(stagesOf('r0-1')).toEqual(['pupa (black scale)']);
    expect(entries.find((entry) => entry.id === 'r0-1')!.neededDegreeDays).toBe(42.5);
    expect(stagesOf('r0-2')?.[0]).toBe('egg-larva (white scale)');
    expect(stagesOf('r1-1')?.[0]).toBe('egg');
    expect(stagesOf('r2-1')).toEqual(['larva', 'pupa']);
    expect(stagesOf('r2-2')).toBeUndefined();
  });

  it('warmer members bring dates forward, and unequal members widen the range', () => {
    const season = caughtAtStart();
    const endOf = (anomalies: number[]) =>
      entriesOf(season, constant(20.3, 3), 3, 18, anomalies)[0]!.stages[4]!.ends!;
    const width = (range: { q10: string; q90: string }) => Date.parse(range.q90) - Date.parse(range.q10);
    expect(Date.parse(endOf([3]).q50)).toBeLessThan(Date.parse(endOf([0]).q50));
    expect(width(endOf([-3, 0, 3]))).toBeGreaterThan(width(endOf([0, 0, 0])));
  });
});

describe('what begins a generation', () => {
  const begun = (season: Season, asOfDays = 10) =>
    entriesOf(season, constant(18, 30), asOfDays, 18).filter((entry) => entry.generation === 1);

  it('nothing without a catch, for a zero, for a band from 0 and before the day of the count', () => {
    expect(begun(caughtAtStart({}))).toEqual([]);
    expect(begun(caughtAtStart({ whitefly: 0, aphid: { low: 0, high: 5 } }))).toEqual([]);
    expect(begun(caughtAtStart(), -1)).toEqual([]);
  });

  it('each pest from its own kind of catch', () => {
    expect(begun(caughtAtStart({ aphid: 1 })).map((entry) => entry.species)).toEqual(['aphis-gossypii']);
    expect(begun(caughtAtStart({ thrips: 9 }))).toEqual([]);
  });

  it('the leaf check that saw it first, but not one that saw none or only black scales', () => {
    const seenOn = (days: number, seen: Season['leafChecks'][number]['seen']) => ({
      id: `l${days}`,
      time: iso(start - days * day),
      leaves: 10,
      seen,
    });
    const leafChecks = [
      seenOn(2, [{ kind: 'whitefly-scale', infestedLeaves: 1 }]),
      seenOn(4, [{ kind: 'whitefly-scale', infestedLeaves: 0 }]),
      seenOn(6, [{ kind: 'black-scale', total: 5 }]),
    ];
    const [entry] = begun({ ...caughtAtStart(), leafChecks });
    expect(daysAfterStart(entry!.startedAt)).toBe(-2);
  });
});

it('counts the hours that were filled while the generation ran, and those before the first reading', () => {
  const curve = constant(20.3, 20);
  const gap = (fromDays: number, toDays: number) => ({
    fromMs: start + fromDays * day,
    toMs: start + toDays * day,
    by: 'diurnal-curve' as const,
  });
  const filled = [gap(1, 1.5), gap(19, 22)];
  expect(entriesOf(caughtAtStart(), { ...curve, filled }, 20, 20)[0]!.filledHours).toBeCloseTo(12 + 24, 6);
  const late = through([
    [2, 20.3],
    [20, 20.3],
  ]);
  expect(entriesOf(caughtAtStart(), late, 20, 20)[0]!.filledHours).toBeCloseTo(48, 6);
});

it('names no date when it stays too cold, and says nothing without a temperature', () => {
  const entries = entriesOf(caughtAtStart(), constant(20.3, 5), 5, 5);
  expect(entries.map((entry) => entry.generation)).toEqual([1]);
  expect(entries[0]!.stages.map((stage) => stage.ends)).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
  expect(ledger(caughtAtStart(), undefined, outlookOf(start, 20), start)).toEqual([]);
});

it('goes on at the pace of the last week when a stage ends after the outlook', () => {
  const season = caughtAtStart();
  const outlook = { ...outlookOf(start, 20.3), hourlyC: new Float64Array(10 * 24).fill(20.3) };
  const [first] = ledger(season, constant(20.3, 1), outlook, start);
  expect(daysAfterStart(first!.stages[4]!.ends!.q50)).toBeCloseTo(381 / 12, 2);
});
