import { serialize } from 'node:v8';
import { describe, expect, it } from 'vitest';
import { openReadBefore } from '../../services/forecasting/readBefore.ts';
import { type Fit, fit as fitSeason } from '../../services/model/index.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

const options = { members: 40 };
const season = smallSeason();
const earlier = fitSeason(season, '2026-05-18T08:00:00Z', options);
const size = serialize(earlier.read).length;

describe('what was read before', () => {
  it('comes back to the bit, and a fit goes on from it', () => {
    const kept = openReadBefore();
    kept.set('lean-to', earlier.read);
    const read = kept.get('lean-to')!;
    expect(read).toEqual(earlier.read);
    const later = '2026-05-25T08:00:00Z';
    const going = fitSeason(season, later, { ...options, earlier: { read } });
    expect(going.forecast).toEqual(fitSeason(season, later, options).forecast);
    const vectors = (fit: Pick<Fit, 'read'>) =>
      [...fit.read.values()].flatMap((days) => days.map((day) => day.vectors));
    expect(vectors(going).some((each) => vectors({ read }).includes(each))).toBe(true);
  });

  it('is kept of as many places as fit, and the one longest not set anew goes first', () => {
    const places = Array.from({ length: 50 }, (_, i) => `place-${i}`);
    const kept = openReadBefore(50 * size);
    for (const place of [...places, 'place-0']) kept.set(place, earlier.read);
    expect(places.filter((place) => !kept.get(place))).toEqual([]);
    kept.set('one-more', earlier.read);
    expect(places.filter((place) => !kept.get(place))).toEqual(['place-1']);
  });

  it('is not kept where it alone is too much', () => {
    const kept = openReadBefore(size - 1);
    kept.set('lean-to', earlier.read);
    expect(kept.get('lean-to')).toBeUndefined();
  });
});
