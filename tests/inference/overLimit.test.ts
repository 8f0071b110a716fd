/** What possible seasons cost the plants: by the person's own limit, and with enemies released. */
import { describe, expect, it } from 'vitest';
import { fit as fitSeason } from '../../services/model/forecast.ts';
import { friendsInDoubt } from '../../services/model/inference/friendsInDoubt.ts';
import type { Release, Season } from '../../services/model/season.ts';
import { startGarden } from '../../simulators/startGarden.ts';
import { trialByName } from '../../simulators/trials.ts';

const pest = 'trialeurodes-vaporariorum';
const garden = startGarden(trialByName('early-whitefly'), 6);
while (garden.week() < 9) garden.advanceWeek();
const season = garden.season();
const now = new Date(garden.nowMs()).toISOString();

const withLimit = (limit: number): Season => ({
  ...season,
  place: { ...season.place, limits: { ...season.place.limits, [pest]: limit } },
});
const damages = (of: Season, releases: Release[] = []) =>
  fitSeason(of, now, { members: 60 })
    .overLimit(pest, { releases })
    .map(({ damage }) => damage);
const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;

it('is the same whichever is asked first, the forecast with a release or what it costs', () => {
  const releases: Release[] = [
    { id: 'cards', enemy: 'encarsia-formosa', form: 'pupa on card', number: 120, time: now, aliveShare: 1 },
  ];
  const one = fitSeason(season, now, { members: 30 });
  const costsFirst = [one.overLimit(pest, { releases }), one.withMore(pest, { releases })];
  const other = fitSeason(season, now, { members: 30 });
  const forecastFirst = [other.withMore(pest, { releases }), other.overLimit(pest, { releases })];
  expect(forecastFirst).toEqual([...costsFirst].reverse());
});

describe('damage of possible seasons', () => {
  const usual = damages(withLimit(10));

  it('at least doubles in each of them when the person bears half as much', () => {
    const strict = damages(withLimit(5));
    expect(mean(usual)).toBeGreaterThan(0);
    for (const [i, damage] of strict.entries()) expect(damage).toBeGreaterThanOrEqual(2 * usual[i]!);
  });

  it('falls by a release of Encarsia, and counts to the end of the season', () => {
    const cards: Release = {
      id: 'cards',
      enemy: 'encarsia-formosa',
      form: 'pupa on card',
      number: 120,
      time: now,
      aliveShare: 1,
    };
    expect(mean(damages(withLimit(10), [cards]))).toBeLessThan(0.7 * mean(usual));
    const endsSoon = { ...season.place, limits: { [pest]: 10 }, seasonEnd: now.slice(5, 10) };
    expect(mean(damages({ ...season, place: endsSoon }))).toBeLessThan(0.1 * mean(usual));
  });

  it('doubts a kind that was set out: in 3 of 10 more of it spares nothing, another kind does', () => {
    const twoDaysMs = 2 * 86_400_000;
    const mites = (id: string, timeMs: number): Release => ({
      id,
      enemy: 'amblyseius-swirskii',
      form: 'loose',
      number: 1200,
      time: new Date(timeMs).toISOString(),
      aliveShare: 1,
    });
    const fitted = fitSeason({ ...season, releases: [mites('first', garden.nowMs() - 7 * twoDaysMs)] }, now, {
      members: 60,
    });
    const damagesWith = (releases: Release[]) =>
      fitted.overLimit(pest, { releases }).map(({ damage }) => damage);
    const left = damagesWith([]);
    const more = damagesWith([mites('more', garden.nowMs() + twoDaysMs)]);
    const wasps = damagesWith([
      {
        ...mites('wasps', garden.nowMs() + twoDaysMs),
        enemy: 'encarsia-formosa',
        form: 'pupa on card',
        number: 240,
      },
    ]);
    const failing = left.flatMap((damage, i) => (more[i] === damage ? [i] : []));
    expect(failing).toHaveLength(18);
    for (const i of failing) expect(wasps[i]).toBeLessThan(left[i]!);
  });

  it('does not doubt a first parcel, set out today, nor a kind of last year', () => {
    const cards = (id: string, time: string): Release => ({
      id,
      enemy: 'encarsia-formosa',
      form: 'pupa on card',
      number: 120,
      time,
      aliveShare: 1,
    });
    const lastYear = { ...season, releases: [cards('old', '2025-05-12T08:00:00Z')] };
    for (const played of [withLimit(10), lastYear]) {
      const without = damages(played);
      const parcel = damages(played, [cards('today', now)]);
      const spared = parcel.filter((damage, i) => damage < without[i]!);
      expect(spared.length).toBe(without.filter((damage) => damage > 0).length);
    }
  });

  it('names the kinds in doubt: of this season, and not the wasps that come by themselves too', () => {
    const set = (enemy: Release['enemy'], time: string): Release => ({
      id: `${enemy} ${time}`,
      enemy,
      form: 'loose',
      number: 100,
      time,
      aliveShare: 1,
    });
    const releases = [
      set('aphidius-colemani', now),
      set('adalia-bipunctata', now),
      set('chrysoperla-carnea', '2025-05-12T08:00:00Z'),
    ];
    expect(friendsInDoubt({ ...season, releases }, 'aphis-gossypii', Date.parse(now))).toEqual([
      'adalia-bipunctata',
    ]);
  });
});
