/** When to look after a release and whether it has settled, in scripted seasons. */
import { describe, expect, it } from 'vitest';
import { formatDay } from '../../services/model/climate/calendar.ts';
import { daysToLook, settledReason } from '../../services/model/planning/followUp/checks.ts';
import { checksOn, encarsia, instant, leaves, release, scales, seasonAt } from './followUpSeason.ts';

const only = <T>(list: readonly T[]): T => {
  expect(list).toHaveLength(1);
  return list[0]!;
};

describe('the day to look follows the development of the young in this house', () => {
  const black = (temperatureC: number) =>
    only(checksOn(seasonAt(temperatureC, { releases: [encarsia('2026-05-01')] }), '2026-07-15')).look;

  it('Encarsia: 155.1 degree-days above 12.8 °C from a card to the first black scale', () => {
    // Half of the pupa 42.5, before the first egg 8.6, white scale 104: 16.9 days at 22 °C, 29.8 at 18 °C.
    expect(black(22)).toMatchObject({ from: '2026-05-18', surelyBy: '2026-05-25', by: 'development' });
    expect(black(18)).toMatchObject({ from: '2026-05-31', surelyBy: '2026-06-07' });
  });

  it('predatory mites: grown young after 77 degree-days above 11 °C, 7 days at 22 °C', () => {
    const mites = release('2026-05-01', 'phytoseiulus-persimilis', 'adults and nymphs in a tube');
    const place = { pests: ['tetranychus-urticae'], limits: {} };
    const { look } = only(checksOn(seasonAt(22, { releases: [mites] }, place), '2026-06-01'));
    expect(look).toMatchObject({ from: '2026-05-08', lookFor: 'predatory mites among the spider mites' });
  });

  it('ladybird larvae are looked for themselves, until they pupate: half of 151 degree-days above 9.4 °C', () => {
    const larvae = release('2026-05-01', 'adalia-bipunctata', 'larvae');
    const place = { pests: ['myzus-persicae'], limits: {} };
    const { look } = only(checksOn(seasonAt(22, { releases: [larvae] }, place), '2026-06-01'));
    // 75.5 / 12.6 = 6.0 days from 9 o'clock.
    expect(look).toMatchObject({ from: '2026-05-04', surelyBy: '2026-05-04', until: '2026-05-07' });
  });

  it('without any temperature the usual number of days stands in, and says so', () => {
    const { look } = only(
      checksOn(seasonAt(undefined, { releases: [encarsia('2026-05-01')] }), '2026-05-13'),
    );
    expect(look).toMatchObject({ from: '2026-05-22', surelyBy: '2026-05-29', by: 'usual-days' });
  });
});

describe('settled, by leaf checks', () => {
  const judged = (day: string, leafChecks: object[], more: object = {}) => {
    const { settlement, because } = only(
      checksOn(seasonAt(22, { releases: [encarsia('2026-05-01')], leafChecks, ...more }), day),
    );
    return [settlement, because];
  };

  it.each([
    ['2026-05-20', [scales('2026-05-19', 0, 20)], 'too-early', 'Black scales are expected by Mon 25 May.'],
    ['2026-05-20', [scales('2026-05-19', 3, 20)], 'settled', 'On Tue 19 May: 3 of 23 scales are black.'],
    [
      '2026-05-27',
      [scales('2026-05-26', 0, 20)],
      'not-settled',
      'No black scales on 10 leaves since Mon 25 May.',
    ],
    [
      '2026-05-27',
      [scales('2026-05-26', 1, 39)],
      'cannot-say',
      'On Tue 26 May: 1 of 40 scales is black, too few to tell.',
    ],
    [
      '2026-05-27',
      [scales('2026-05-26', 0, 0)],
      'cannot-say',
      'On Tue 26 May there was nothing left to lay into, so nothing can show.',
    ],
    [
      '2026-05-27',
      [leaves('2026-05-26', [{ kind: 'black-scale', infestedLeaves: 0 }], 5)],
      'cannot-say',
      'No black scales on 5 leaves since Mon 25 May, too few leaves to tell.',
    ],
    ['2026-05-27', [], 'cannot-say', 'Nobody has looked for black scales since Mon 18 May.'],
    [
      '2026-05-27',
      [scales('2026-05-19', 0, 20)],
      'cannot-say',
      'No black scales on Tue 19 May, but it was early; nobody has looked since.',
    ],
    [
      '2026-05-27',
      [leaves('2026-05-26', [{ kind: 'whitefly-scale', infestedLeaves: 3 }])],
      'cannot-say',
      'Leaves were looked at on Tue 26 May, but black scales were not counted.',
    ],
    [
      '2026-05-27',
      [scales('2026-05-19', 0, 20), leaves('2026-05-26', [{ kind: 'whitefly-scale', infestedLeaves: 3 }])],
      'cannot-say',
      'No black scales on Tue 19 May, but it was early; leaves were looked at on Tue 26 May, but black scales were not counted.',
    ],
  ])('on %s after %j: %s', (day, checks, settlement, because) => {
    expect(judged(day as string, checks as object[])).toEqual([settlement, because]);
  });

  it('before its day nothing tells, and black scales that early are of others', () => {
    const season = seasonAt(22, {
      releases: [encarsia('2026-05-01')],
      leafChecks: [scales('2026-05-08', 9, 9)],
    });
    const { settlement, because, look } = only(checksOn(season, '2026-05-12'));
    expect(settlement).toBe('too-early');
    // As expected then, by possible seasons, within a day of what came.
    expect(['2026-05-17', '2026-05-18', '2026-05-19']).toContain(look.from);
    expect(because).toBe(`Black scales are expected from ${formatDay(look.from)} on.`);
  });

  it('leaves are counted where nobody counted each scale', () => {
    const seen = [{ kind: 'black-scale', infestedLeaves: 4 }];
    expect(judged('2026-05-27', [leaves('2026-05-26', seen)])).toEqual([
      'settled',
      'On Tue 26 May: black scales on 4 of 10 leaves.',
    ]);
  });

  it('settled once, and none on the leaves of the last four weeks: gone, unless there is nothing to lay into', () => {
    const once = scales('2026-05-26', 8, 12);
    const at = (later: object) => {
      const season = seasonAt(22, { releases: [encarsia('2026-05-01')], leafChecks: [once, later] });
      return only(checksOn(season, '2026-06-25'));
    };
    expect(at(scales('2026-06-20', 0, 9))).toMatchObject({
      settlement: 'settled',
      gone: true,
      because: 'On Tue 26 May: 8 of 20 scales are black. None on 10 leaves since Sat 20 June.',
    });
    expect(at(scales('2026-06-20', 0, 0)).gone).toBeUndefined();
    expect(at(scales('2026-06-20', 1, 9)).gone).toBeUndefined();
    expect(settledReason([at(scales('2026-06-20', 0, 9))], 'trialeurodes-vaporariorum')).toEqual([
      'The Encarsia of Fri 1 May had settled, but none show now. On Tue 26 May: 8 of 20 scales are black. None on 10 leaves since Sat 20 June.',
    ]);
  });

  it('small wasps on the traps tell as well, guests or not being told apart by their number', () => {
    const caught = (wasps: number) => ({
      trapCounts: [
        {
          id: 'c',
          trapId: 'door',
          time: instant('2026-05-29'),
          exposureDays: 7,
          counts: { whitefly: 10, 'small-wasp': wasps },
        },
      ],
    });
    expect(judged('2026-05-30', [], caught(5))).toEqual([
      'settled',
      '5 small wasps to 10 whitefly on the traps since Mon 25 May.',
    ]);
    expect(judged('2026-05-30', [], caught(2))[0]).toBe('cannot-say');
  });
});

describe('settled, by other signs', () => {
  it('bugs that no leaf check names are told by a sighting', () => {
    const bugs = release('2026-05-01', 'orius-laevigatus', 'adults and old nymphs');
    const place = { pests: ['frankliniella-occidentalis'], limits: {} };
    const on = (sightings: object[]) =>
      only(checksOn(seasonAt(24, { releases: [bugs], sightings }, place), '2026-05-30'));
    const saw = { id: 's', time: instant('2026-05-20'), what: 'young Orius bugs' };
    expect(on([saw])).toMatchObject({
      settlement: 'settled',
      because: 'You saw young Orius bugs on Wed 20 May.',
    });
    expect(on([])).toMatchObject({
      settlement: 'cannot-say',
      because: 'No sighting of orange nymphs is noted since Wed 6 May: “Who is it?” names them.',
    });
  });

  it('larvae that nobody looked for before they pupated cannot be judged', () => {
    const larvae = release('2026-05-01', 'adalia-bipunctata', 'larvae');
    const place = { pests: ['myzus-persicae'], limits: {} };
    const on = (leafChecks: object[]) =>
      only(checksOn(seasonAt(22, { releases: [larvae], leafChecks }, place), '2026-05-20'));
    expect(on([]).because).toBe(
      'By now they have pupated, and nobody looked for ladybird larvae before Thu 7 May.',
    );
    const none = leaves('2026-05-06', [{ kind: 'ladybird-larva', infestedLeaves: 0 }]);
    expect(on([none]).settlement).toBe('not-settled');
    const some = leaves('2026-05-06', [{ kind: 'ladybird-larva', infestedLeaves: 2 }]);
    expect(on([some]).settlement).toBe('settled');
  });

  it('a leaf check with nothing at all is none of them too', () => {
    const mites = release('2026-05-01', 'phytoseiulus-persimilis', 'adults and nymphs in a tube');
    const place = { pests: ['tetranychus-urticae'], limits: {} };
    const season = seasonAt(22, { releases: [mites], leafChecks: [leaves('2026-05-20', [])] }, place);
    expect(only(checksOn(season, '2026-05-25'))).toMatchObject({
      settlement: 'not-settled',
      because: 'No predatory mites on 10 leaves since Fri 15 May.',
    });
  });

  it('mites of two kinds are not told apart by a leaf check', () => {
    const sachets = (day: string, enemy: string) => release(day, enemy, 'mixed stages in sachets');
    const place = { pests: ['trialeurodes-vaporariorum', 'frankliniella-occidentalis'], limits: {} };
    const releases = [
      sachets('2026-05-01', 'amblyseius-swirskii'),
      sachets('2026-05-02', 'neoseiulus-cucumeris'),
    ];
    const leafChecks = [leaves('2026-05-28', [{ kind: 'predatory-mite', infestedLeaves: 3 }])];
    const checks = checksOn(seasonAt(22, { releases, leafChecks }, place), '2026-05-30');
    expect(checks.map(({ because }) => because)).toEqual([
      'On Thu 28 May: predatory mites on 3 of 10 leaves, of these or of swirskii mites.',
      'On Thu 28 May: predatory mites on 3 of 10 leaves, of these or of cucumeris mites.',
    ]);
  });
});

describe('what the advice takes from it', () => {
  const at = (day: string, leafChecks: object[]) =>
    checksOn(seasonAt(22, { releases: [encarsia('2026-05-01')], leafChecks }), day);
  const whitefly = 'trialeurodes-vaporariorum';

  it('the day to look is kept while it is ahead', () => {
    const ahead = at('2026-05-10', []);
    expect(daysToLook(ahead)).toEqual([
      { day: only(ahead).look.from, verb: 'Look', text: 'for black scales' },
    ]);
    expect(daysToLook(at('2026-05-20', []))).toEqual([
      { day: '2026-05-25', verb: 'Look', text: 'for black scales' },
    ]);
    expect(daysToLook(at('2026-05-30', []))).toEqual([]);
  });

  it('the check is a reason once it tells, and for six weeks', () => {
    expect(settledReason(at('2026-05-15', []), whitefly)).toEqual([]);
    expect(settledReason(at('2026-05-27', [scales('2026-05-26', 0, 20)]), whitefly)).toEqual([
      'The Encarsia of Fri 1 May has not settled. No black scales on 10 leaves since Mon 25 May.',
    ]);
    expect(settledReason(at('2026-05-27', []), whitefly)).toEqual([
      'Nobody can say whether the Encarsia of Fri 1 May has settled. Nobody has looked for black scales since Mon 18 May.',
    ]);
    expect(settledReason(at('2026-07-20', []), whitefly)).toEqual([]);
    expect(settledReason(at('2026-05-27', []), 'myzus-persicae')).toEqual([]);
  });

  it('a release that can be judged speaks before a newer one that cannot', () => {
    const larvae = release('2026-05-20', 'adalia-bipunctata', 'larvae');
    const wasps = release('2026-05-01', 'aphidius-colemani', 'mummies in a tube');
    const seen = [
      { kind: 'mummy', total: 5 },
      { kind: 'aphid', total: 20 },
    ];
    const changes = { releases: [larvae, wasps], leafChecks: [leaves('2026-05-28', seen)] };
    const checks = checksOn(seasonAt(20, changes, { pests: ['myzus-persicae'], limits: {} }), '2026-06-03');
    expect(settledReason(checks, 'myzus-persicae')).toEqual([
      'The Aphidius of Fri 1 May has settled. On Thu 28 May: 5 of 25 aphids are mummies; such wasps also come by themselves.',
    ]);
  });

  it('releases of last year are left out', () => {
    const season = seasonAt(22, { releases: [encarsia('2025-06-01'), encarsia('2026-05-01')] });
    expect(checksOn(season, '2026-05-20').map(({ release: { id } }) => id)).toEqual(['release-2026-05-01']);
  });
});
