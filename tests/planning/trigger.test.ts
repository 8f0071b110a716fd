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
