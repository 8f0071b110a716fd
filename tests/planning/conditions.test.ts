import { describe, expect, it } from 'vitest';
import { sine } from '../../services/model/climate/dayShape.ts';
import { judgeConditions } from '../../services/model/planning/conditions/all.ts';
import { evidence } from '../../services/model/planning/evidence.ts';
import { groupOf, waitingTimes } from '../../services/model/planning/waitingTimes.ts';
import { type EnemyId, enemyIds, type PestId, type Season } from '../../services/model/season.ts';
import { enemyTraits, speciesById } from '../../services/model/species/catalogue.ts';
import { asOfMs, fixedFit, invented } from './season.ts';

const mild = { minC: 14, maxC: 26 };

function judged(
  season: Season,
  enemyId: EnemyId,
  temperature = mild,
  pest: PestId = 'trialeurodes-vaporariorum',
) {
  const enemy = speciesById(enemyId);
  return judgeConditions({
    season,
    forecast: fixedFit({ left: 0.8 }, temperature).forecast,
    pest,
    evidence: evidence(season, pest, asOfMs),
    enemy,
    traits: enemyTraits(enemy),
    asOfMs,
    on: '2026-05-20',
  });
}

const legalIn = (country: string | undefined) =>
  judged(invented({}, country === undefined ? {} : { country }), 'amblyseius-swirskii').find(
    ({ rule }) => rule === 'legal',
  );

function verdicts(...asked: Parameters<typeof judged>) {
  const conditions = judged(...asked);
  for (const condition of conditions) expect(condition.source.length).toBeGreaterThan(3);
  return Object.fromEntries(conditions.map((c) => [c.rule, c.verdict]));
}

describe('conditions of a release', () => {
  it('Encarsia hardly walks at 15 and 18 °C (van Roermund & van Lenteren 1995): a cool week fails', () => {
    expect(verdicts(invented(), 'encarsia-formosa', { minC: 10, maxC: 18 }).warmth).toBe('fails');
    expect(verdicts(invented(), 'encarsia-formosa', { minC: 14, maxC: 26 }).warmth).toBe('holds');
  });

  it('cannot say anything about warmth without an outlook', () => {
    const season = invented();
    const enemy = speciesById('encarsia-formosa');
    const { forecast } = fixedFit({ left: 0.5 });
    const [warmth] = judgeConditions({
      season,
      forecast: { ...forecast, temperature: { days: [], outlook: [] } },
      pest: 'trialeurodes-vaporariorum',
      evidence: evidence(season, 'trialeurodes-vaporariorum', asOfMs),
      enemy,
      traits: enemyTraits(enemy),
      asOfMs,
      on: '2026-05-20',
    }).filter((c) => c.rule === 'warmth');
    expect(warmth?.verdict).toBe('cannot-say');
  });

  it('predatory mite eggs: half hatch at 1.14 kPa deficit for A. swirskii (Ferrero et al. 2010)', () => {
    const readings = (humidityPct: number) =>
      Array.from({ length: 48 }, (_, hour) => ({
        sensorId: 'bench',
        time: new Date(asOfMs - (hour + 1) * 3_600_000).toISOString(),
        temperatureC: 25,
        humidityPct,
      }));
    // At 25 °C saturation is 3.168 kPa (FAO-56): 60 % leaves 1.267 kPa, 70 % leaves 0.950 kPa.
    expect(verdicts(invented({ readings: readings(60) }), 'amblyseius-swirskii')['egg-humidity']).toBe(
      'fails',
    );
    expect(verdicts(invented({ readings: readings(70) }), 'amblyseius-swirskii')['egg-humidity']).toBe(
      'holds',
    );
    expect(verdicts(invented(), 'amblyseius-swirskii')['egg-humidity']).toBe('cannot-say');
  });

  it('an unknown spray cannot be judged, a soap wash is over on the next day', () => {
    const sprayed = (kind: string, time: string) => invented({ treatments: [{ id: 't', kind, time }] });
    expect(verdicts(sprayed('other-spray', '2026-04-01T08:00:00Z'), 'encarsia-formosa').residue).toBe(
      'cannot-say',
    );
    expect(verdicts(sprayed('soap', '2026-05-12T08:00:00Z'), 'encarsia-formosa').residue).toBe('holds');
    expect(verdicts(sprayed('neem', '2026-05-12T08:00:00Z'), 'encarsia-formosa').residue).toBe('fails');
  });

  it('a spray known to harm still counts beside an unknown one', () => {
    const treatments = [
      { id: 'a', kind: 'other-spray', time: '2026-04-01T08:00:00Z' },
      { id: 'b', kind: 'neem', time: '2026-05-12T08:00:00Z' },
    ];
    expect(verdicts(invented({ treatments }), 'encarsia-formosa').residue).toBe('fails');
  });

  it('the newest word about ants counts, in whatever order it came', () => {
    const sightings = [
      { id: 'b', time: '2026-05-10T08:00:00Z', what: 'no ants' },
      { id: 'a', time: '2026-05-02T08:00:00Z', what: 'ants on the stems' },
    ];
    const season = invented({ sightings }, { pests: ['myzus-persicae'] });
    expect(verdicts(season, 'aphidius-colemani', undefined, 'myzus-persicae').ants).toBe('holds');
  });

  // Wildlife and Countryside Act 1981, section 14, as read on the page of the ministry: glasshouses included.
  it('asks about the law, naming the Act in Great Britain', () => {
    const law = legalIn('GB');
    expect(law).toMatchObject({ verdict: 'cannot-say', source: expect.stringContaining('1981, section 14') });
    expect(law?.text).toMatch(/ask your supplier and your authority\. In Great Britain .* glasshouses too/);
  });

  it.each(['FR', undefined])(
    'says of the law elsewhere (%s) that it is not known, and whom to ask',
    (country) => {
      const law = legalIn(country);
      expect(law?.verdict).toBe('cannot-say');
      expect(law?.text).toMatch(
        /ask your supplier and your authority\. .* not known here: ask before you order/,
      );
      expect(law?.text).not.toContain('Britain');
    },
  );

  it('asks to take traps down for wasps only', () => {
    expect(verdicts(invented(), 'encarsia-formosa').traps).toBe('cannot-say');
    expect(verdicts(invented(), 'amblyseius-swirskii').traps).toBe('holds');
  });
});

describe('hours above a threshold on a sine day', () => {
  it('closed forms: half the day above the mean, a third of it above the upper quarter', () => {
    const hoursAbove = (minC: number, maxC: number, thresholdC: number) =>
      24 * sine.shareAbove({ minC, maxC }, thresholdC);
    expect(hoursAbove(10, 30, 20)).toBeCloseTo(12, 10);
    expect(hoursAbove(10, 30, 25)).toBeCloseTo(8, 10);
    expect(hoursAbove(10, 30, 31)).toBe(0);
    expect(hoursAbove(19, 30, 18)).toBe(24);
    expect(hoursAbove(20, 20, 18)).toBe(24);
  });
});

it('every waiting time carries a source', () => {
  for (const byGroup of Object.values(waitingTimes)) {
    for (const group of new Set(enemyIds.map(groupOf))) expect(byGroup[group].source).not.toBe('');
  }
});
