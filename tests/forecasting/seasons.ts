/** Seasons for property tests: valid, lopsided, with lists in any order and times in any offset. */
import fc from 'fast-check';
import {
  enemyIds,
  leafKinds,
  type OutdoorPoint,
  type Season,
  seasonSchema,
  treatmentKinds,
} from '../../services/model/index.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

const fromMs = Date.parse('2026-03-01T00:00:00Z');
const offsets = ['+00:00', '+02:00', '-03:30'] as const;

/** The same instant may be written with several offsets. */
const time = fc
  .record({ second: fc.nat(90 * 86_400), offset: fc.constantFrom(...offsets) })
  .map(({ second, offset }) => withOffset(fromMs + second * 1000, offset));
const id = fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,9}$/);
const sensorId = fc.constantFrom('bench', 'door', 'never-described');
const tenths = fc.integer({ min: -200, max: 600 }).map((t) => (t === 0 ? 0 : t / 10));
const note = fc.string({ maxLength: 12 });

const listOf = <T extends object>(entry: fc.Arbitrary<T>, idOf: (entry: T) => string) =>
  fc.uniqueArray(entry, { selector: idOf, maxLength: 6 });
const withId = <T extends object>(fields: { [K in keyof T]: fc.Arbitrary<T[K]> }) =>
  listOf(fc.record({ id, ...fields } as { id: fc.Arbitrary<string> }), (entry) => entry.id);

/** As somebody else's program might write it: defaults left out, order and repetition free. */
const written = fc.record({
  plantings: withId({ crop: fc.constant('pepper'), plants: fc.integer({ min: 1, max: 40 }) }),
  sensors: fc.subarray([
    { id: 'door', name: 'Door', unit: 'Far' },
    { id: 'bench', name: 'Bench' },
  ]),
  readings: fc.array(
    fc.oneof(
      fc.record({ sensorId, time, temperatureC: tenths }),
      fc.record({ sensorId, time, temperatureC: tenths, humidityPct: fc.integer({ min: 1, max: 100 }) }),
    ),
    { maxLength: 40 },
  ),
  dailyExtremes: listOf(
    fc.record({ day: fc.constantFrom('2026-04-02', '2026-04-01', '2026-03-31'), minC: tenths }),
    ({ day }) => day,
  ).map((days) => days.map((d) => ({ ...d, maxC: d.minC + 8 }))),
  traps: withId({ name: note.map((text) => `trap ${text}`), hungAt: time }),
  trapCounts: withId({
    trapId: fc.constantFrom('door', 'middle'),
    time,
    exposureDays: fc.integer({ min: 1, max: 60 }),
    counts: fc.constantFrom({}, { whitefly: 3 }, { whitefly: { low: 6, high: 20 }, unknown: 1 }),
    note,
  }),
  leafChecks: withId({
    time,
    leaves: fc.integer({ min: 3, max: 30 }),
    seen: fc.array(fc.record({ kind: fc.constantFrom(...leafKinds), infestedLeaves: fc.nat(3) })),
  }),
  sightings: withId({ time, what: note.map((text) => `mite ${text}`) }),
  releases: withId({
    enemy: fc.constantFrom(...enemyIds),
    form: fc.constant('pupa on card'),
    number: fc.integer({ min: 1, max: 500 }),
    time,
  }),
  orders: withId({ enemy: fc.constantFrom(...enemyIds), number: fc.constant(50), orderedAt: time }),
  treatments: withId({ kind: fc.constantFrom(...treatmentKinds), time }),
  outlook: fc.uniqueArray(fc.record({ time, temperatureC: tenths }), {
    selector: (point) => Date.parse(point.time),
    maxLength: 5,
  }),
  outdoor: fc.uniqueArray(
    fc
      .record({ time, temperatureC: tenths, issuedAt: fc.option(time, { nil: undefined }) })
      .map(
        ({ issuedAt, ...point }): OutdoorPoint => (issuedAt === undefined ? point : { ...point, issuedAt }),
      ),
    { selector: (point) => `${Date.parse(point.time)} ${Date.parse(point.issuedAt ?? '')}`, maxLength: 5 },
  ),
});

export const seasons: fc.Arbitrary<Season> = written.map((lists) =>
  seasonSchema.parse({ format: 'glasstide-season', version: 1, place: smallSeason().place, ...lists }),
);

function withOffset(timeMs: number, offset: (typeof offsets)[number]): string {
  const minutes = { '+00:00': 0, '+02:00': 120, '-03:30': -210 }[offset];
  return new Date(timeMs + minutes * 60_000).toISOString().replace('.000Z', offset);
}
