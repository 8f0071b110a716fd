/** A fixed part of `npm run -s fuzz`. */
import { describe, expect, it } from 'vitest';
import { inputsOf, parts } from './parts.ts';

const all = 5000;

describe('whatever comes in', () => {
  it.each(parts)(
    '$name: no crash, no fault, no refusal without its reason',
    async (part) => {
      await part.run(inputsOf(part, all), 20261125);
    },
    180_000,
  );

  it('is at least so many inputs', () => {
    expect(parts.reduce((sum, part) => sum + inputsOf(part, all), 0)).toBeGreaterThanOrEqual(all);
  });
});
