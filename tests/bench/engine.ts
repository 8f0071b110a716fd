/**
 * The coupled engine: how many days of one possible season it passes in a second, against the plain reference at
 * equal accuracy and against a bare loop over as many numbers (the limit).
 */
import { simulate } from '../../services/model/population/simulate.ts';
import type { StageTable } from '../../services/model/population/stages.ts';
import { type World, withInterventions } from '../../services/model/population/world.ts';
import type { EnemyId, Release } from '../../services/model/season.ts';
import { courseIn, houseAt, middleMember } from '../population/house.ts';
import { type Fineness, referenceSeason } from '../population/reference.ts';

const days = 200;
const members = 100;

const releaseOf = (enemy: EnemyId, form: string, number: number, day: number): Release => ({
  id: enemy,
  enemy,
  form,
  number,
  time: new Date(day * 86_400_000).toISOString(),
  aliveShare: 1,
});

/** Whitefly with Encarsia and swirskii mites, melon aphid with Aphidius, 200 days at 22 degC. */
const worlds: World[] = [
  withInterventions(
    houseAt('trialeurodes-vaporariorum', 22, days),
    [
      releaseOf('encarsia-formosa', 'pupa on card', 60, 40),
      releaseOf('amblyseius-swirskii', 'mixed stages in sachets', 500, 40),
    ],
    [],
  ),
  withInterventions(
    houseAt('aphis-gossypii', 22, days),
    [releaseOf('aphidius-colemani', 'mummies in a tube', 10, 10)],
    [],
  ),
];
/** Young and enemies are added up once a week, as in the forecast. */
const weekEnds = Uint8Array.from({ length: days }, (_, day) => (day % 7 === 6 ? 1 : 0));
const memberOf = (world: World) => middleMember(world, { crowdingPerM2: 1000 });

function engine(): void {
  for (const world of worlds) {
    const [member, wanted] = [memberOf(world), weekEnds];
    for (let i = 0; i < members; i++) simulate(world, member, days, wanted);
  }
}

/** Cohort-stage cells that stand on a day once the season runs: births of the days it takes all to mature. */
function cellsOf(world: World): number {
  const cells = (table: StageTable, clockPerDay: number) =>
    Math.min(days, table.until.at(-1)! / clockPerDay) * table.stages.length;
  const clockAt22C = (tableOfDays: { values: Float64Array }) => tableOfDays.values[18]!;
  const enemies = world.enemies.flatMap(({ at }) =>
    at ? [cells(at.table, clockAt22C(at.clockPerDay))] : [],
  );
  const { table, clockPerDay } = world.pests[0]!;
  return cells(table, clockAt22C(clockPerDay)) + enemies.reduce((sum, each) => sum + each, 0);
}

/** One multiplication and addition for every cell, day and member. */
function bareLoop(): number {
  let last = 0;
  for (const world of worlds) {
    const cells = new Float64Array(Math.round(cellsOf(world))).fill(1);
    for (let pass = 0; pass < members * days; pass++) {
      for (let i = 0; i < cells.length; i++) cells[i] = cells[i]! * 0.999 + 0.001;
    }
    last += cells[0]!;
  }
  return last;
}

/** Weekly log ratios of adults to those of the finest run, while more than one in 10 m2, smallest first. */
function missesOf(adultsOf: readonly Float64Array[], finest: readonly Float64Array[]): number[] {
  const logs = finest.flatMap((exact, i) =>
    Array.from(exact).flatMap((adults, day) =>
      day % 7 === 6 && adults > 0.1 ? [Math.abs(Math.log(adultsOf[i]![day]! / adults))] : [],
    ),
  );
  return logs.sort((a, b) => a - b);
}

/** The median, or the root mean square, which one day in a steep fall decides. */
const accuracies = {
  median: (misses: readonly number[]) => misses[Math.floor(misses.length / 2)]!,
  'mean square': (misses: readonly number[]) =>
    Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length),
};
type Accuracy = keyof typeof accuracies;

const reference = (fine: Fineness) =>
  worlds.map((world) => referenceSeason(world, memberOf(world), fine).pests[0]!.adults);

/** The cheapest reference that misses the finest run by no more than the engine does. */
function equallyAccurate(by: Accuracy): { fine: Fineness; engineMiss: number } {
  const finest = reference({ stepsPerDay: 24, speeds: 48 });
  const of = accuracies[by];
  const simulated = worlds.map((world) => courseIn(world, memberOf(world)).adults);
  const engineMiss = of(missesOf(simulated, finest));
  const tried = [1, 2, 3, 4, 6, 8, 12].flatMap((stepsPerDay) =>
    [8, 12, 16, 24, 32].map((speeds) => ({ stepsPerDay, speeds })),
  );
  const byCost = tried.sort((a, b) => a.stepsPerDay ** 2 * a.speeds - b.stepsPerDay ** 2 * b.speeds);
  const fine = byCost.find((each) => of(missesOf(reference(each), finest)) <= engineMiss);
  if (!fine) throw new Error('no reference tried is as accurate as the engine');
  return { fine, engineMiss };
}

/** Lines to print; `medianMs` times a piece of work. */
export async function engineLines(medianMs: (work: () => unknown) => Promise<number>): Promise<string[]> {
  const engineMs = await medianMs(engine);
  const limitMs = await medianMs(bareLoop);
  const times = async (fine: Fineness) =>
    (((await medianMs(() => reference(fine))) * members) / engineMs).toFixed(0);
  const atEqual = async (by: Accuracy) => {
    const { fine, engineMiss } = equallyAccurate(by);
    return `  ${await times(fine)} times as fast as the reference at equal accuracy (${by} of log adults ${engineMiss.toFixed(3)}: ${fine.stepsPerDay} steps a day, ${fine.speeds} speeds)`;
  };
  const perSecond = (members * days * 1000) / engineMs;
  const cells = worlds.map((world) => cellsOf(world).toFixed(0)).join(' and ');
  return [
    `coupled engine (whitefly, aphid, three enemies; ${cells} cells): ${perSecond.toFixed(0)} member-days a second`,
    `  1,000 members of 200 days: ${(engineMs / members).toFixed(2)} s`,
    await atEqual('median'),
    await atEqual('mean square'),
    `  ${await times({ stepsPerDay: 24, speeds: 32 })} times as fast as the reference at hourly steps and 32 speeds`,
    `  ${(limitMs / engineMs).toFixed(2)} of the speed of a bare multiply-add over the same cells and days`,
  ];
}
