import { describe, expect, it } from 'vitest';
import { cardsHanging } from '../../services/model/observation/cards.ts';

const startMs = Date.UTC(2026, 3, 1);

describe('cards hanging', () => {
  it('are counted by day, from the hour they are hung to the hour they are taken down', () => {
    const traps = [
      { hungAt: '2026-03-20T00:00:00Z' },
      { hungAt: '2026-04-01T18:00:00Z', takenDownAt: '2026-04-03T06:00:00Z' },
    ];
    expect([...cardsHanging(traps, startMs, 4)]).toEqual([1.25, 2, 1.25, 1]);
  });

  it('are none where none was hung, or all were taken down before', () => {
    const traps = [{ hungAt: '2026-03-01T00:00:00Z', takenDownAt: '2026-03-20T00:00:00Z' }];
    expect([...cardsHanging(traps, startMs, 2)]).toEqual([0, 0]);
    expect([...cardsHanging([], startMs, 2)]).toEqual([0, 0]);
  });
});
