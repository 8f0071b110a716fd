/**
 * A garden to be played week by week: what is written down so far, what one may do, and the truth. Played again with
 * the same scenario and seed and other deeds, weather, visitors and the luck of every day are the same.
 */
import type { Order, Release, Season, Treatment } from '../services/model/index.ts';
import { type Garden, newGarden, releaseEnemies, stepGarden, truthNow, washGarden } from './garden.ts';
import { type Round, weeklyRound } from './grower.ts';
import { forecastOutdoors, measuredOutdoors } from './outdoors.ts';
import { stream } from './random.ts';
import type { Scenario } from './scenario.ts';
import { measure, type SensorKind } from './sensors.ts';
import { enemyKindOf, species } from './species.ts';
import type { Truth } from './truth.ts';

const hourMs = 3_600_000;
export const weekMs = 7 * 24 * hourMs;

export type Deed =
  | { do: 'release'; enemy: Release['enemy']; number: number; atMs?: number; price?: number }
  | { do: 'wash'; kind: Treatment['kind']; coveredShare: number; atMs?: number };

export interface VirtualGarden {
  /** Weekly rounds that are over, of those in the season. */
  week(): number;
  weeks: number;
  nowMs(): number;
  /** Everything written down until a moment; until now when left out. */
  season(untilMs?: number): Season;
  /** Does it now, or at a later hour of the season; what is ordered for later is written down as an order. */
  act(deed: Deed): void;
  /** Lives on to the end of the next weekly round. */
  advanceWeek(): void;
  /** Lives on to an hour before the next weekly round. */
  advanceTo(untilMs: number): void;
  truth: Truth;
  garden: Garden;
}

interface Written {
  readings: Season['readings'];
  trapCounts: Season['trapCounts'];
  leafChecks: Season['leafChecks'];
  releases: Release[];
  orders: Order[];
  treatments: Treatment[];
  outdoor: Season['outdoor'];
}

/** Starts a season at its first hour. */
export function startGarden(scenario: Scenario, seed: number): VirtualGarden {
  const garden = newGarden(scenario, seed);
  const { startMs } = garden;
  const written: Written = {
    readings: [],
    trapCounts: [],
    leafChecks: [],
    releases: [],
    orders: [],
    treatments: [],
    outdoor: scenario.outdoorForecast ? forecastOutdoors(garden) : [],
  };
  const deeds: (Deed & { atMs: number })[] = calendarOf(scenario, startMs);
  const round: Round = { cardsSinceMs: startMs };
  let week = 0;
  const act = (deed: Deed) => {
    const atMs = Math.max(deed.atMs ?? garden.timeMs, garden.timeMs);
    if (atMs > garden.timeMs && deed.do === 'release')
      written.orders.push(orderOf(deed, garden.timeMs, atMs));
    deeds.push({ ...deed, atMs });
    doWhatIsDue(garden, deeds, written);
  };
  const liveUntil = (untilMs: number) => {
    while (garden.timeMs < untilMs) {
      stepGarden(garden);
      if ((garden.timeMs - startMs) % hourMs === 0) readSensors(garden, seed, written);
      if (scenario.outdoorForecast) written.outdoor.push(...measuredOutdoors(garden));
      doWhatIsDue(garden, deeds, written);
    }
  };
  return {
    week: () => week,
    weeks: Math.floor((Date.parse(scenario.endsAt) - startMs) / weekMs),
    nowMs: () => garden.timeMs,
    season: (untilMs = garden.timeMs) => seasonOf(scenario, written, startMs, untilMs),
    act,
    advanceWeek: () => {
      week += 1;
      liveUntil(startMs + week * weekMs);
      const { counts, leaves } = weeklyRound(garden, round, stream(seed, `round ${week}`));
      written.trapCounts.push(...counts);
      written.leafChecks.push(...leaves);
      if (scenario.outdoorForecast) written.outdoor.push(...forecastOutdoors(garden));
    },
    advanceTo: liveUntil,
    truth: garden.truth,
    garden,
  };
}

const calendarOf = ({ grower }: Scenario, startMs: number) =>
  (grower.calendar ?? []).map(({ afterDays, enemy, number }) => ({
    do: 'release' as const,
    enemy: species[enemy].enemy!.id,
    number,
    atMs: startMs + afterDays * 24 * hourMs,
  }));

function orderOf(deed: Deed & { do: 'release' }, orderedMs: number, arrivesMs: number): Order {
  const { enemy, number, price } = deed;
  return {
    id: `order-${enemy}-${orderedMs}`,
    enemy,
    number,
    orderedAt: iso(orderedMs),
    expectedOn: iso(arrivesMs).slice(0, 10),
    ...(price === undefined ? {} : { price }),
  };
}

function doWhatIsDue(garden: Garden, deeds: (Deed & { atMs: number })[], written: Written) {
  for (let n = 0; n < deeds.length; ) {
    const deed = deeds[n]!;
    if (deed.atMs > garden.timeMs) n += 1;
    else {
      deeds.splice(n, 1);
      doNow(garden, deed, written);
    }
  }
}

function doNow(garden: Garden, deed: Deed, written: Written) {
  const time = iso(garden.timeMs);
  if (deed.do === 'wash') {
    const { kind, coveredShare } = deed;
    washGarden(garden, { kind, coveredShare });
    written.treatments.push({ id: `wash-${time}`, kind, time, coveredShare });
    return;
  }
  const { enemy, number, price } = deed;
  const random = stream(garden.seed, `parcel ${enemy} ${time}`);
  const aliveShare = Math.round(100 * (0.75 + 0.2 * random())) / 100;
  const kind = enemyKindOf(enemy);
  releaseEnemies(garden, kind, number, aliveShare);
  const { form } = species[kind].enemy!;
  const paid = price === undefined ? {} : { price };
  written.releases.push({ id: `release-${enemy}-${time}`, enemy, form, number, time, aliveShare, ...paid });
  const open = written.orders.findIndex((order) => order.enemy === enemy && order.arrivedAt === undefined);
  if (open >= 0) written.orders[open] = { ...written.orders[open]!, arrivedAt: time };
}

/** Every hour what each sensor shows, unless it is silent. */
function readSensors(garden: Garden, seed: number, written: Written) {
  const { scenario, startMs, timeMs } = garden;
  for (const sensor of scenario.sensors) {
    if (isSilent(scenario, sensor, (timeMs - startMs) / hourMs)) continue;
    const random = stream(seed, `sensor ${sensor.id} ${timeMs}`);
    const { temperatureC, humidityPct } = measure(sensor, truthNow(garden), timeMs, random);
    written.readings.push({ sensorId: sensor.id, time: iso(timeMs), temperatureC, humidityPct });
  }
}

const isSilent = ({ faults }: Scenario, { id }: SensorKind, hour: number) =>
  faults.some(
    ({ sensorId, kind, afterHours, hours }) =>
      sensorId === id && kind === 'silence' && hour >= afterHours && hour < afterHours + hours,
  );

function seasonOf(scenario: Scenario, written: Written, startMs: number, untilMs: number): Season {
  const until = iso(untilMs);
  const earlier = <T extends { time: string }>(records: readonly T[]) =>
    records.filter(({ time }) => time <= until);
  return {
    format: 'glasstide-season',
    version: 1,
    place: scenario.place,
    plantings: [scenario.planting],
    sensors: scenario.sensors.map(({ id, name }) => ({ id, name, unit: 'Cel' })),
    readings: earlier(written.readings),
    dailyExtremes: [],
    traps: scenario.traps.map(({ id, name }) => ({ id, name, hungAt: iso(startMs) })),
    trapCounts: earlier(written.trapCounts),
    leafChecks: earlier(written.leafChecks),
    sightings: [],
    releases: earlier(written.releases),
    orders: written.orders
      .filter(({ orderedAt }) => orderedAt <= until)
      .map((order) => asKnownAt(order, until)),
    treatments: earlier(written.treatments),
    outlook: [],
    outdoor: written.outdoor.filter(({ time, issuedAt }) => (issuedAt ?? time) <= until),
  };
}

const asKnownAt = ({ arrivedAt, ...order }: Order, until: string): Order =>
  arrivedAt !== undefined && arrivedAt <= until ? { ...order, arrivedAt } : order;

const iso = (ms: number) => new Date(ms).toISOString();
