import { expect, it } from 'vitest';
import { lastFew } from '../../services/forecasting/lastFew.ts';

it('keeps the last few, and forgets the one that was longest not set', () => {
  const few = lastFew<number>(2);
  few.set('lean-to', 1);
  few.set('polytunnel', 2);
  few.set('lean-to', 3);
  few.set('cold-frame', 4);
  expect(['lean-to', 'polytunnel', 'cold-frame'].map(few.get)).toEqual([3, undefined, 4]);
});
