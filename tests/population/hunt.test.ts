/** Hunts on several prey and by several hunters, by hand and by direction; switches by air and day length. */
import { describe, expect, it } from 'vitest';
import { antDays, antsAt } from '../../services/model/observation/ants.ts';
import { simulate } from '../../services/model/population/simulate.ts';
import {
  type Course,
  createWorld,
  type World,
  withInterventions,
} from '../../services/model/population/world.ts';
import type { EnemyId, PestId, Release } from '../../services/model/season.ts';
import { enemyTraits, speciesById } from '../../services/model/species/catalogue.ts';
import { allDays, constantPath, middleMember } from './house.ts';

const dayMs = 86_400_000;
const release = (enemy: EnemyId, number: number, day: number, form = 'adults'): Release => ({
  id: `${enemy}-${day}`,
  enemy,
  form,
  number,
  time: new Date((day + 0.5) * dayMs).toISOString(),
  aliveShare: 1,
});

const bothReleased = [release('encarsia-formosa', 60, 2), release('macrolophus-pygmaeus', 100, 2)];

function run(pests: PestId[], releases: Release[], more: Partial<Course> & { startingPerM2?: number } = {}) {
  const { startingPerM2 = 20, ...course } = more;
  const world: World = createWorld(pests, {
    startMs: 0,
    areaM2: 10,
    path: constantPath(22, 30),
    releases,
    treatments: [],
    ...course,
  });
  const out = simulate(world, middleMember(world, { startingPerM2 }), world.days, allDays(world));
  const huntersOf = (enemy: EnemyId) =>
    out.enemies[world.enemies.findIndex(({ id }) => id === enemy)]!.hunters;
  const all = (pest: number) =>
    out.pests[pest]!.adults.map((adults, day) => adults + out.pests[pest]!.young[day]!);
  return { all, huntersOf, world };
}

describe('several prey', () => {
  const mites = [release('amblyseius-swirskii', 200, 5)];

  it('a pest grows as alone when the other has no enemy in common', () => {
    const [together, alone] = [
      run(['trialeurodes-vaporariorum', 'myzus-persicae'], []),
      run(['trialeurodes-vaporariorum'], []),
    ];
    expect(together.all(0)).toEqual(alone.all(0));
  });

  it('the other prey keeps hunters busy at first, and feeds more of them later', () => {
    const both = run(['trialeurodes-vaporariorum', 'frankliniella-occidentalis'], mites, {
      startingPerM2: 500,
    });
    const one = run(['trialeurodes-vaporariorum'], mites, { startingPerM2: 500 });
    expect(both.all(0)[6]).toBeGreaterThan(one.all(0)[6]!);
    expect(both.huntersOf('amblyseius-swirskii')[25]).toBeGreaterThan(
      one.huntersOf('amblyseius-swirskii')[25]!,
    );
  });

  it('nothing depends on the order of the pests', () => {
    const one = run(['trialeurodes-vaporariorum', 'frankliniella-occidentalis'], mites);
    const other = run(['frankliniella-occidentalis', 'trialeurodes-vaporariorum'], mites);
    for (const day of [6, 15, 29]) expect(one.all(0)[day]).toBeCloseTo(other.all(1)[day]!, 9);
  });
});

describe('natural enemies that eat each other', () => {
  it('Macrolophus leaves fewer Encarsia than one that spared parasitised scales', () => {
    const { world } = run(['trialeurodes-vaporariorum'], bothReleased, { path: constantPath(22, 40) });
    const sparing = world.hunters.map((record) => {
      const traits = enemyTraits(record);
      const attacks = traits.attacks.filter(({ prey }) => prey !== 'encarsia-formosa');
      return { ...record, traits: { ...traits, attacks } };
    });
    const wasps = [world, withInterventions({ ...world, hunters: sparing }, bothReleased, [])].map((each) => {
      const out = simulate(each, middleMember(each, { startingPerM2: 20 }), each.days, allDays(each));
      return out.enemies[each.enemies.findIndex(({ id }) => id === 'encarsia-formosa')]!.hidden[20]!;
    });
    expect(wasps[0]).toBeLessThan(0.98 * wasps[1]!);
    expect(wasps[0]).toBeGreaterThan(0);
  });
});

describe('ants', () => {
  const larvae = [release('adalia-bipunctata', 300, 2, 'larvae')];
  const days = (seen: number) => new Uint8Array(30).fill(seen);

  it('leave more aphids to those they keep them for', () => {
    const [without, among] = [0, 1].map((seen) => run(['myzus-persicae'], larvae, { ants: days(seen) }));
    expect(among!.all(0)[12]).toBeGreaterThan(1.05 * without!.all(0)[12]!);
  });

  it('matter to nobody on whitefly', () => {
    const [without, among] = [0, 1].map((seen) =>
      run(['trialeurodes-vaporariorum'], [release('encarsia-formosa', 60, 2)], { ants: days(seen) }),
    );
    expect(among!.all(0)).toEqual(without!.all(0));
  });

  it('are about from their sighting until somebody notes that they are gone, four weeks at most', () => {
    const note = (day: number, what: string) => ({
      id: `${day}`,
      what,
      time: new Date(day * dayMs).toISOString(),
    });
    const notes = [note(2, 'ants on the stem'), note(6, 'no ants any more'), note(40, 'Ants again')];
    expect(antsAt(notes, 1 * dayMs)).toBe('nobody looked');
    expect(antsAt(notes, 3 * dayMs)).toBe('seen');
    expect(antsAt(notes, 7 * dayMs)).toBe('none');
    expect(antsAt([note(2, 'ants'), note(6, 'The ants are gone')], 7 * dayMs)).toBe('none');
    expect(antsAt(notes, 67 * dayMs)).toBe('seen');
    expect(antsAt(notes, 68 * dayMs)).toBe('nobody looked');
    expect(Array.from(antDays(notes, 0, 8))).toEqual([0, 1, 1, 1, 1, 0, 0, 0]);
  });
});

describe('air and day length', () => {
  it('dry air lets fewer eggs of Phytoseiulus hatch: half at the published deficit (Ferrero et al. 2010)', () => {
    const half = enemyTraits(speciesById('phytoseiulus-persimilis')).eggHalfFailsAtVpdKPa!;
    const at = (deficit: number) => {
      const path = { ...constantPath(22, 30), deficitKPa: new Float64Array(30).fill(deficit) };
      const { world } = run(['tetranychus-urticae'], [release('phytoseiulus-persimilis', 50, 2)], { path });
      return world.enemies.find(({ id }) => id === 'phytoseiulus-persimilis')!.at!.hatching[5]!;
    };
    expect(at(half)).toBeCloseTo(0.5, 12);
    expect(at(0.3)).toBeGreaterThan(0.85);
    expect(at(2)).toBeLessThan(0.01);
    expect(at(Number.NaN)).toBe(1);
  });

  it('the aphid midge rests in short cool days, not in short warm ones (Yamane; IRIIS: references, row 18)', () => {
    const at = (dayLengthH: number, temperatureC: number) => {
      const path = { ...constantPath(temperatureC, 60), dayLengthH: new Float64Array(60).fill(dayLengthH) };
      return run(['myzus-persicae'], [release('aphidoletes-aphidimyza', 100, 2, 'pupae in moist peat')], {
        path,
        startingPerM2: 100,
      }).huntersOf('aphidoletes-aphidimyza')[20]!;
    };
    expect(at(12.7, 20)).toBe(0);
    expect(at(16, 20)).toBeGreaterThan(0);
    expect(at(12.7, 30)).toBeGreaterThan(0);
  });
});
