/**
 * A scenario as a stream of what the outside world would see: sensor messages and the grower's
 * records, in order of time. Same scenario and seed, same stream.
 */
import type { Advice, Release } from '../services/model/index.ts';
import { type Garden, newGarden, releaseEnemies, stepGarden, truthNow } from './garden.ts';
import { type Round, weeklyRound } from './grower.ts';
import { type Random, stream } from './random.ts';
import type { Scenario } from './scenario.ts';
import { measure, type Sample, type SensorKind, speak } from './sensors.ts';
import { enemyKindOf } from './species.ts';

export type GardenEvent =
  /** A quarter of an hour begins; whatever follows belongs to it. */
  | { what: 'quarter'; atMs: number }
  | { what: 'message'; atMs: number; topic: string; payload: string; retain: boolean }
  /** `noun` as in the paths of the API. */
  | { what: 'record'; atMs: number; noun: string; data: object }
  /** The grower looks at the advice; answer with it, or with nothing. */
  | { what: 'ask'; atMs: number };

type Play = Generator<GardenEvent, void, Advice | undefined>;

const dayMs = 86_400_000;
const hourMs = 3_600_000;

export function* play(scenario: Scenario, seed: number): Play {
  const garden = newGarden(scenario, seed);
  const endMs = Date.parse(scenario.endsAt);
  const sensors = scenario.sensors.map((kind) => ({
    kind,
    /** Where a stuck sensor stays. */
    held: undefined as Sample | undefined,
    random: stream(seed, `sensor ${kind.id}`),
  }));
  const grower = {
    round: { cardsSinceMs: garden.timeMs },
    random: stream(seed, 'grower'),
    parcels: [] as Parcel[],
  };
  yield* moveIn(scenario, garden.timeMs);
  while (garden.timeMs < endMs) {
    stepGarden(garden);
    yield { what: 'quarter', atMs: garden.timeMs };
    for (const sensor of sensors) {
      const sample = measure(sensor.kind, truthNow(garden), garden.timeMs, sensor.random);
      yield* messages(scenario, sensor, sample, garden.timeMs);
    }
    yield* growersQuarter(garden, grower);
  }
}

/** Sets the place up: what a person types in once. */
function* moveIn(scenario: Scenario, atMs: number): Play {
  const time = new Date(atMs).toISOString();
  yield { what: 'record', atMs, noun: 'places', data: scenario.place };
  yield { what: 'record', atMs, noun: 'plantings', data: scenario.planting };
  for (const { id, name } of scenario.sensors)
    yield { what: 'record', atMs, noun: 'sensors', data: { id, name } };
  for (const { id, name } of scenario.traps)
    yield { what: 'record', atMs, noun: 'traps', data: { id, name, hungAt: time } };
  for (const { id } of scenario.sensors) {
    const topic = `glasstide/${scenario.place.id}/health/${id}`;
    yield { what: 'message', atMs, topic, payload: 'online', retain: true };
  }
}

function* messages(
  scenario: Scenario,
  sensor: { kind: SensorKind; held: Sample | undefined; random: Random },
  sample: Sample,
  atMs: number,
): Play {
  const startMs = Date.parse(scenario.startsAt);
  const spells = scenario.faults.map((fault) => ({ ...fault, beganMs: startMs + fault.afterHours * hourMs }));
  const spell = spells.find(
    ({ sensorId, beganMs, hours }) =>
      sensorId === sensor.kind.id && atMs >= beganMs && atMs < beganMs + hours * hourMs,
  );
  const stuck = spell?.kind === 'stuck' && sensor.held;
  const said = stuck ? { ...sample, temperatureC: stuck.temperatureC } : sample;
  sensor.held = said;
  const topic = `glasstide/${scenario.place.id}/readings/${sensor.kind.id}`;
  for (const message of speak(sensor.kind, said, spell, sensor.random))
    yield { what: 'message', atMs, topic, ...message };
}

interface Parcel {
  enemy: Release['enemy'];
  form: string;
  number: number;
  arrivesMs: number;
}

/** Counts once a week at a fixed hour, then perhaps orders; opens parcels on the day they come. */
function* growersQuarter(garden: Garden, grower: { round: Round; random: Random; parcels: Parcel[] }): Play {
  const { scenario, timeMs } = garden;
  if ((timeMs - hourOfDay(scenario.grower.hourUtc)) % dayMs !== 0) return;
  const due = grower.parcels.filter((parcel) => parcel.arrivesMs <= timeMs);
  grower.parcels = grower.parcels.filter((parcel) => parcel.arrivesMs > timeMs);
  for (const parcel of due)
    yield { what: 'record', atMs: timeMs, noun: 'releases', data: letGo(garden, parcel, grower.random) };
  const daysIn = Math.floor((timeMs - Date.parse(scenario.startsAt)) / dayMs);
  if (daysIn === 0 || daysIn % 7 !== 0) return;
  const { counts, leaves } = weeklyRound(garden, grower.round, grower.random);
  for (const data of counts) yield { what: 'record', atMs: timeMs, noun: 'trap-counts', data };
  for (const data of leaves) yield { what: 'record', atMs: timeMs, noun: 'leaf-checks', data };
  if (!scenario.grower.actsOnAdvice || counts.length === 0) return;
  const advice = yield { what: 'ask', atMs: timeMs };
  const parcel = advice && grower.parcels.length === 0 ? parcelFor(advice) : undefined;
  if (!parcel) return;
  grower.parcels.push(parcel);
  const expectedOn = new Date(parcel.arrivesMs).toISOString().slice(0, 10);
  const { enemy, number } = parcel;
  const data = {
    id: `order-${expectedOn}`,
    enemy,
    number,
    orderedAt: new Date(timeMs).toISOString(),
    expectedOn,
  };
  yield { what: 'record', atMs: timeMs, noun: 'orders', data };
}

function parcelFor(advice: Advice): Parcel | undefined {
  const { plan, decision } = advice;
  if (!plan || (decision !== 'order' && decision !== 'top-up')) return undefined;
  const { enemy, form, number } = plan;
  return { enemy, form, number, arrivesMs: Date.parse(plan.arrivesOn ?? plan.windowFrom) };
}

function letGo(garden: Garden, parcel: Parcel, random: Random): Release {
  const aliveShare = Math.round(100 * (0.75 + 0.2 * random())) / 100;
  releaseEnemies(garden, enemyKindOf(parcel.enemy), parcel.number, aliveShare);
  const time = new Date(garden.timeMs).toISOString();
  const { enemy, form, number } = parcel;
  return { id: `release-${time.slice(0, 10)}`, enemy, form, number, time, aliveShare };
}

const hourOfDay = (hour: number) => hour * hourMs;
