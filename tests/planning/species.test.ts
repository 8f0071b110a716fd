/** Advice for every pest and enemy follows from their records: no species has a rule of its own. */
import { describe, expect, it } from 'vitest';
import {
  adviceSchema,
  adviseFrom,
  type Fit,
  type PestForecast,
  type Season,
} from '../../services/model/index.ts';
import { weighable } from '../../services/model/planning/candidates.ts';
import { judgeConditions } from '../../services/model/planning/conditions/all.ts';
import { evidence } from '../../services/model/planning/evidence.ts';
import { counted, isPlural } from '../../services/model/planning/grammar.ts';
import { washCosts } from '../../services/model/planning/loss.ts';
import { parcelWords } from '../../services/model/planning/parcel.ts';
import { groupOf } from '../../services/model/planning/waitingTimes.ts';
import { type EnemyId, enemyIds, type PestId } from '../../services/model/season.ts';
import { enemyTraits, speciesById } from '../../services/model/species/catalogue.ts';
import { asOf, asOfMs, fixedFit, invented } from './season.ts';

const supplierOf = (...enemies: EnemyId[]) => ({
  ...invented().place.supplier,
  pricePerAnimal: Object.fromEntries(enemies.map((enemy) => [enemy, 0.02])),
});

/** Two leaf checks, a week apart. */
const looks = (kind: string, ...infested: number[]) =>
  infested.map((infestedLeaves, i) => ({
    id: `look-${i}`,
    time: `2026-05-${13 - 7 * (infested.length - 1 - i)}T08:00:00Z`.replace(/-(\d)T/, '-0$1T'),
    leaves: 10,
    seen: [{ kind, infestedLeaves }],
  }));

function garden(pest: PestId, changes: object, place: object = {}): Season {
  return invented({ trapCounts: [], ...changes }, { pests: [pest], limits: {}, ...place });
}
function advice(season: Season, fit: Fit) {
  const answer = adviceSchema.parse(adviseFrom(season, fit, asOf));
  expect(answer.sentence.split(' ').length, answer.sentence).toBeLessThanOrEqual(30);
  return answer;
}

describe('enemies that are weighed', () => {
  const ids = (pest: PestId, place: object = {}) =>
    weighable(garden(pest, {}, place).place, pest).map(({ id }) => id);

  it('attack the pest, are sold and are known well enough', () => {
    expect(ids('tetranychus-urticae')).toContain('phytoseiulus-persimilis');
    expect(ids('tetranychus-urticae')).toContain('neoseiulus-californicus');
    expect(ids('trialeurodes-vaporariorum')).toContain('encarsia-formosa');
    for (const pest of ['tetranychus-urticae', 'trialeurodes-vaporariorum', 'myzus-persicae'] as const) {
      for (const id of ids(pest)) expect(speciesById(id).notAdvised).toBeUndefined();
    }
  });

  it('none of a pest that is itself too little known', () => {
    expect(speciesById('planococcus-citri').notAdvised).toBeDefined();
    expect(ids('planococcus-citri')).toEqual([]);
  });

  it('outdoors only those at home in the open: no wasp of the glasshouse', () => {
    const outdoors = ids('myzus-persicae', { kind: 'outdoors' });
    expect(outdoors).toContain('adalia-bipunctata');
    expect(outdoors).not.toContain('aphidius-colemani');
    expect(outdoors).not.toContain('macrolophus-pygmaeus');
    expect(ids('trialeurodes-vaporariorum', { kind: 'outdoors' })).toEqual([]);
  });
});

describe('a pest counted on leaves', () => {
  const season = garden(
    'tetranychus-urticae',
    { leafChecks: looks('spider-mite', 3, 5) },
    { supplier: supplierOf('phytoseiulus-persimilis', 'amblyseius-swirskii') },
  );
  const chance = (left: number) =>
    fixedFit({ left, released: left / 2, catchNow: 2 }, undefined, 'tetranychus-urticae');

  it('is bought for by what the leaves show', () => {
    const answer = advice(season, chance(0.8));
    expect(answer.decision).toBe('order');
    expect(answer.reasons[0]).toBe(
      'The last leaf checks were 3 of 10 then 5 of 10 leaves with spider mites.',
    );
    expect(answer.wouldChange[0]).toBe(
      'If before Mon 18 May 2 or fewer of ten leaves have any, wait and count again.',
    );
    expect(answer.daysToKeep.find(({ verb }) => verb === 'Count')?.text).toBe(
      'leaves with any, of ten looked under',
    );
  });

  it('is weighed at the first leaf with any, and waits while there is none again', () => {
    const looked = (...found: [number, number]) =>
      advice(garden('tetranychus-urticae', { leafChecks: looks('spider-mite', ...found) }), chance(0.8));
    expect(looked(0, 1).decision).toBe('order');
    const none = looked(0, 0);
    expect(none.decision).toBe('leave');
    expect(none.wouldChange[0]).toContain('on a leaf at the next check');
  });

  it('where every enemy lets it pass the limit, the one that soon brings it down again comes first', () => {
    const fitted = chance(0.95);
    const [left] = fitted.forecast.pests;
    const weeks = (...over: number[]) =>
      over.map((probabilityOverLimit) => ({ ...left!.weeks[0]!, probabilityOverLimit }));
    const withWeeks = (over: number[]): PestForecast => ({ ...left!, weeks: weeks(...over) });
    const answer = advice(season, {
      ...fitted,
      withMore: (_, { releases = [] }) =>
        releases[0]?.enemy === 'phytoseiulus-persimilis' ? withWeeks([1, 1, 0, 0]) : withWeeks([1, 1, 1, 1]),
      overLimit: (_, { releases = [] }) => {
        const weeksOver = releases[0]?.enemy === 'phytoseiulus-persimilis' ? 2 : 10;
        return Array.from({ length: 20 }, () => ({ weeksOver, damage: 0.05 * weeksOver }));
      },
    });
    expect(answer.plan?.enemy).toBe('phytoseiulus-persimilis');
  });
});

it('says of mealybugs that too little is known, and buys nothing', () => {
  const season = garden('planococcus-citri', { leafChecks: looks('mealybug', 4, 6) });
  const answer = advice(season, fixedFit({ left: 0.9 }, undefined, 'planococcus-citri'));
  expect(answer.decision).toBe('wait');
  expect(answer.sentence).toContain('too little is published about mealybugs to weigh a release');
});

describe('outdoors', () => {
  const aphids = { leafChecks: looks('aphid', 5, 9) };
  const outdoors = garden('myzus-persicae', aphids, {
    kind: 'outdoors',
    supplier: supplierOf('adalia-bipunctata', 'aphidius-colemani'),
  });
  const answer = advice(outdoors, fixedFit({ left: 0.9 }, undefined, 'myzus-persicae'));

  it('leaving it comes first, and a release among the other ways only by those at home there', () => {
    expect(answer.decision).toBe('leave');
    expect(answer.candidates.map(({ id }) => id)).toEqual(['leave', 'release-adalia-bipunctata', 'wash']);
    // One price on the pages and in the weighing.
    expect(answer.candidates.at(-1)?.price).toBe(washCosts);
  });

  it('names who comes by itself', () => {
    expect(answer.reasons.join(' ')).toMatch(/Look for seven-spot ladybirds.*: they come by themselves\./);
  });
});

describe('conditions by record', () => {
  function judged(
    enemy: EnemyId,
    pest: PestId,
    more: { changes?: object; meanC?: number; on?: string } = {},
  ) {
    const { changes = {}, meanC = 20, on = '2026-05-20' } = more;
    const season = garden(pest, changes);
    const { forecast } = fixedFit({ left: 0.8 }, { minC: meanC - 4, maxC: meanC + 4 }, pest);
    const conditions = judgeConditions({
      season,
      forecast,
      pest,
      evidence: evidence(season, pest, asOfMs),
      enemy: speciesById(enemy),
      traits: enemyTraits(speciesById(enemy)),
      asOfMs,
      on,
    });
    return (rule: string) => conditions.find((condition) => condition.rule === rule)!;
  }
  const ants = { sightings: [{ id: 'a', time: '2026-05-10T08:00:00Z', what: 'ants' }] };

  it('ants matter for pests that they keep, and by how much they hinder each enemy', () => {
    const ladybirds = judged('adalia-bipunctata', 'myzus-persicae', { changes: ants })('ants');
    const share = Math.round(100 * enemyTraits(speciesById('adalia-bipunctata')).antsTake!);
    expect(ladybirds.verdict).toBe('fails');
    expect(ladybirds.text).toContain(`${share} % of their search`);
    expect(judged('cryptolaemus-montrouzieri', 'planococcus-citri', { changes: ants })('ants').verdict).toBe(
      'fails',
    );
    expect(judged('encarsia-formosa', 'trialeurodes-vaporariorum', { changes: ants })('ants').verdict).toBe(
      'holds',
    );
    expect(judged('orius-laevigatus', 'frankliniella-occidentalis', { changes: ants })('ants').verdict).toBe(
      'holds',
    );
  });

  it('short days stop aphid midges unless the week is warm', () => {
    // 12 June at 51 degrees north has more than 16 hours, 13 May fewer than 15.5 (their record).
    const midges = (meanC: number, on: string) =>
      judged('aphidoletes-aphidimyza', 'myzus-persicae', { meanC, on })('day-length').verdict;
    expect(midges(20, '2026-06-12')).toBe('holds');
    expect(midges(20, '2026-05-13')).toBe('fails');
    expect(midges(30, '2026-05-13')).toBe('holds');
  });

  it('those that live on pollen may wait where nothing was seen', () => {
    expect(judged('amblyseius-swirskii', 'frankliniella-occidentalis')('prey').text).toContain('pollen');
    expect(judged('phytoseiulus-persimilis', 'tetranychus-urticae')('prey').text).toContain(
      'look under five leaves',
    );
  });

  it('traps come down for wasps, larvae and mites ignore them, other winged ones are released away from them', () => {
    const aphids = (enemy: EnemyId) => judged(enemy, 'myzus-persicae')('traps');
    expect(aphids('aphidius-colemani').text).toContain('take the traps down');
    expect(aphids('adalia-bipunctata').verdict).toBe('holds');
    expect(judged('orius-laevigatus', 'frankliniella-occidentalis')('traps').text).toContain(
      'away from the traps',
    );
  });
});

describe('words by record', () => {
  // Phytoseiidae, and the wasps Aphelinidae and Braconidae: families of the genera as the trade sells them.
  it.each(enemyIds)('%s stands among its kin', (enemy) => {
    const genus = enemy.split('-')[0]!;
    const mites = ['amblyseius', 'phytoseiulus', 'neoseiulus'];
    const wasps = ['encarsia', 'eretmocerus', 'aphidius', 'aphelinus'];
    const kin = mites.includes(genus) ? 'mite' : wasps.includes(genus) ? 'wasp' : 'predator';
    expect(groupOf(enemy)).toBe(kin);
  });

  it('a parcel names its animals once', () => {
    for (const enemy of enemyIds) {
      const words = parcelWords({ enemy, number: 1000 });
      expect(words.match(/ of /g), words).toHaveLength(1);
    }
  });

  it('thrips stay thrips, Latin names stand for one kind', () => {
    expect([counted(1, 'thrips'), counted(1, 'spider mites'), counted(3, 'thrips')]).toEqual([
      '1 thrips',
      '1 spider mite',
      '3 thrips',
    ]);
    expect(['Orius', 'Aphidius ervi', 'Delphastus', 'whitefly'].some(isPlural)).toBe(false);
    expect(['aphid midges', 'thrips', 'lacewings'].every(isPlural)).toBe(true);
  });
});
