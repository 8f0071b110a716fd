import { describe, expect, it } from 'vitest';
import type { TrapCount } from '../../services/model/index.ts';
import { cardsHanging } from '../../services/model/observation/cards.ts';

const startMs = Date.UTC(2026, 3, 1);
const trap = (id: string, hungAt: string, takenDownAt?: string) => ({
  id,
  name: id,
  hungAt,
  ...(takenDownAt ? { takenDownAt } : {}),
});
const round = (time: string, card: TrapCount['card'], exposureDays: number): TrapCount => ({
  id: time,
  trapId: 'door',
  time,
  exposureDays,
  countedFraction: 1,
  card,
  counts: {},
});
const hanging = (traps: ReturnType<typeof trap>[], trapCounts: TrapCount[], days: number) => [
  ...cardsHanging({ traps, trapCounts }, startMs, days),
];

describe('cards hanging', () => {
  it('are counted by day, from the hour they are hung to the hour they are taken down', () => {
    const traps = [
      trap('door', '2026-03-20T00:00:00Z'),
      trap('end', '2026-04-01T18:00:00Z', '2026-04-03T06:00:00Z'),
    ];
    expect(hanging(traps, [], 4)).toEqual([1.25, 2, 1.25, 1]);
  });

  it('are none where none was hung, or all were taken down before', () => {
    expect(hanging([trap('door', '2026-03-01T00:00:00Z', '2026-03-20T00:00:00Z')], [], 2)).toEqual([0, 0]);
    expect(hanging([], [], 2)).toEqual([0, 0]);
  });

  it('do not hang from the round before one that found them down to the next that hung again', () => {
    const door = [trap('door', '2026-03-01T00:00:00Z')];
    const down = round('2026-04-04T00:00:00Z', 'down', 2);
    expect(hanging(door, [down], 13)).toEqual([1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1]);
    const again = round('2026-04-09T00:00:00Z', 'new', 3);
    expect(hanging(door, [again, down], 8)).toEqual([1, 0, 0, 0, 0, 1, 1, 1]);
    const lost = round('2026-04-04T00:00:00Z', 'lost', 2);
    expect(hanging(door, [lost], 4)).toEqual([1, 1, 1, 1]);
  });
});
