import { describe, expect, it } from 'vitest';
import { evidence } from '../../services/model/planning/evidence.ts';
import { trigger } from '../../services/model/planning/trigger.ts';
import { asOfMs, count, invented } from './season.ts';

const whitefly = 'trialeurodes-vaporariorum';
const seen = (season = invented()) => evidence(season, whitefly, asOfMs);

describe('evidence pooled over 16 days', () => {
  it('divides the catch by exposure and counted fraction', () => {
    // 9 in 7 days on the whole card, 14 in 14 days on half a card: 23 / (1 + 1) trap-weeks
    const season = invented({
      trapCounts: [
        count('2026-05-06', 9),
        count('2026-05-13', 14, { exposureDays: 14, countedFraction: 0.5 }),
      ],
    });
    expect(seen(season).catchPerTrapWeek).toBeCloseTo(11.5, 10);
  });

  it('reads a lost card as a gap, never as 0', () => {
    const lost = { ...count('2026-05-13', 0), card: 'lost', counts: {} };
    expect(seen(invented({ trapCounts: [count('2026-05-06', 9), lost] })).catchPerTrapWeek).toBeCloseTo(
      9,
      10,
    );
  });

  it('does not look beyond the instant of the advice', () => {
    const season = invented({ trapCounts: [count('2026-05-06', 9), count('2026-05-20', 400)] });
    expect(seen(season).lastCatch).toBe(9);
  });

  it('takes the earlier total off a card that hung on', () => {
    const season = invented({
      trapCounts: [count('2026-05-06', 9), count('2026-05-13', 14, { card: 'same' })],
    });
    // 9 in the first week, 5 more in the second.
    expect(seen(season).catchPerTrapWeek).toBeCloseTo(7, 10);
    expect(seen(season).lastCatch).toBe(5);
  });

  it('reads an open band near its low end', () => {
    const many = count('2026-05-13', 0, { counts: { whitefly: { low: 101, high: 100_000 } } });
    expect(seen(invented({ trapCounts: [many] })).lastCatch).toBeLessThan(200);
  });

  it('counts leaves on which none was found as counted', () => {
    const leafChecks = [
      { id: 'l', time: '2026-05-12T09:00:00Z', leaves: 10, seen: [{ kind: 'whitefly-scale', total: 0 }] },
    ];
    const found = seen(invented({ trapCounts: [], leafChecks }));
    expect(found).toMatchObject({ countedLately: true, everSeen: false, onLeaves: 0 });
    expect(found.lastCountMs).toBe(Date.parse('2026-05-12T09:00:00Z'));
  });

  it('tells days apart by the calendar of the place', () => {
    // 22:00 and 01:00 UTC are the same summer evening in Chicago, two days in London.
    const trapCounts = ['2026-05-12T22:00:00Z', '2026-05-13T01:00:00Z'].map((time, i) =>
      count('2026-05-12', 3, { id: `c${i}`, trapId: `t${i}`, time }),
    );
    expect(seen(invented({ trapCounts }, { timeZone: 'America/Chicago' })).daysSeen).toBe(1);
    expect(seen(invented({ trapCounts })).daysSeen).toBe(2);
  });

  it('counts days seen, not traps seen', () => {
    const sameDay = [count('2026-05-13', 3), count('2026-05-13', 2, { id: 'b' })];
    expect(seen(invented({ trapCounts: sameDay })).daysSeen).toBe(1);
  });

  it('takes black scales as a share of all scales', () => {
    const leafChecks = [
      {
        id: 'l',
        time: '2026-05-12T09:00:00Z',
        leaves: 10,
        seen: [
          { kind: 'whitefly-scale', total: 8 },
          { kind: 'black-scale', total: 12 },
        ],
      },
    ];
    expect(seen(invented({ leafChecks })).parasitised).toEqual({ signs: 12, of: 20 });
  });
});

describe('the plain rule', () => {
  const fires = { evidence: seen(), daysLeft: 155 };

  it('fires on a rising catch in mid-season', () => {
    expect(trigger(fires)).toEqual({ fires: true });
  });

  it.each([
    ['no-recent-count', { ...fires, evidence: seen(invented({ trapCounts: [count('2026-04-10', 9)] })) }],
    ['not-seen', { ...fires, evidence: seen(invented({ trapCounts: [count('2026-05-13', 0)] })) }],
    [
      'too-few',
      {
        ...fires,
        evidence: seen(invented({ trapCounts: [count('2026-05-06', 1), count('2026-05-13', 0)] })),
      },
    ],
    ['seen-once', { ...fires, evidence: seen(invented({ trapCounts: [count('2026-05-13', 6)] })) }],
    ['late-in-season', { ...fires, daysLeft: 59 }],
    ['season-over', { ...fires, daysLeft: -1 }],
    ['parcel-at-work', { ...fires, daysSinceParcel: 27 }],
    [
      'wasps-at-work',
      {
        ...fires,
        evidence: seen(
          invented({
            trapCounts: [4, 9, 14].map((n, i) =>
              count(`2026-05-${['04', '08', '13'][i]}`, n, { counts: { whitefly: n, 'small-wasp': n } }),
            ),
          }),
        ),
      },
    ],
  ] as const)('stays silent: %s', (because, facts) => {
    expect(trigger(facts)).toEqual({ fires: false, because });
  });
});
