/**
 * What every store of readings keeps to. Each implementation runs this suite unchanged and adds its
 * own tests. Expected values are worked out here from the readings sent, never by a store.
 */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Readings, StoredReading } from '../../services/store/store.ts';

export interface ReadingsSubject {
  readings: Readings;
  /** Closes and opens again on the same data. */
  reopen(): Promise<Readings>;
  close(): Promise<void>;
  /**
   * Command of a process that adds readings to the same data without end and prints, after each
   * acknowledgement, the place, sensor, time and temperature as one line of JSON.
   */
  endlessWriter: string[];
}

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const noon = Date.parse('2026-05-13T12:00:00Z');
const always = { fromMs: 0, toMs: Number.MAX_SAFE_INTEGER };
const reading = (minute: number, temperatureC: number, more: Partial<StoredReading> = {}): StoredReading => ({
  sensorId: 'bench',
  timeMs: noon + minute * minuteMs,
  temperatureC,
  ...more,
});

export function readingsContract(name: string, open: () => Promise<ReadingsSubject>): void {
  describe(`readings in ${name}`, () => {
    let subject: ReadingsSubject;
    let readings: Readings;
    let places = 0;
    const newPlace = () => `place-${++places}`;
    beforeAll(async () => {
      subject = await open();
      readings = subject.readings;
    });
    afterAll(() => subject.close());

    it('gives back what was added, ordered by time, then sensor', async () => {
      const place = newPlace();
      const sent = [
        reading(10, 21.5, { humidityPct: 63 }),
        reading(0, 20),
        reading(0, -0.5, { sensorId: 'apex', doubt: 'unshielded' }),
      ];
      expect(await readings.add(place, sent)).toEqual({ stored: 3, duplicates: 0, conflicts: [] });
      expect(await readings.range(place, always)).toEqual([sent[2], sent[1], sent[0]]);
    });

    it('counts a repeated message and stores it once', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 20), reading(1, 21)]);
      const again = await readings.add(place, [reading(0, 20), reading(1, 21), reading(2, 22)]);
      expect(again).toEqual({ stored: 1, duplicates: 2, conflicts: [] });
      expect(await readings.range(place, always)).toHaveLength(3);
    });

    it('keeps the first of two values for one minute and tells of the other', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 18.2)]);
      const added = await readings.add(place, [reading(0, 64.8)]);
      expect(added).toEqual({ stored: 0, duplicates: 1, conflicts: [reading(0, 64.8)] });
      expect(await readings.range(place, always)).toEqual([reading(0, 18.2)]);
      expect((await readings.add(place, [reading(0, 18.2, { humidityPct: 50 })])).conflicts).toHaveLength(1);
    });

    it('accepts late readings and rolls their hour up again', async () => {
      const place = newPlace();
      await readings.add(place, [reading(70, 30), reading(10, 20)]);
      await readings.add(place, [reading(5, 14), reading(65, 10)]);
      expect((await readings.range(place, always)).map((r) => r.temperatureC)).toEqual([14, 20, 10, 30]);
      expect(await readings.hourly(place, always)).toEqual([
        { sensorId: 'bench', hourMs: noon, count: 2, meanC: 17, minC: 14, maxC: 20, doubted: 0 },
        { sensorId: 'bench', hourMs: noon + hourMs, count: 2, meanC: 20, minC: 10, maxC: 30, doubted: 0 },
      ]);
    });

    it('takes the beginning of a window and leaves out its end', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 1), reading(60, 2), reading(120, 3)]);
      const window = { fromMs: noon, toMs: noon + 2 * hourMs };
      expect((await readings.range(place, window)).map((r) => r.temperatureC)).toEqual([1, 2]);
      expect((await readings.hourly(place, window)).map((h) => h.hourMs)).toEqual([noon, noon + hourMs]);
    });

    it('answers for one sensor when asked, and for one place only', async () => {
      const [place, other] = [newPlace(), newPlace()];
      await readings.add(place, [reading(0, 1), reading(0, 2, { sensorId: 'door' })]);
      await readings.add(other, [reading(0, 3)]);
      const door = { ...always, sensorId: 'door' };
      expect(await readings.range(place, door)).toEqual([reading(0, 2, { sensorId: 'door' })]);
      expect((await readings.hourly(place, door)).map((h) => h.meanC)).toEqual([2]);
      expect(await readings.range(other, always)).toEqual([reading(0, 3)]);
      expect(await readings.range(newPlace(), always)).toEqual([]);
    });

    it('leaves doubted readings out of the hour, and an hour without a believed one out of the list', async () => {
      const place = newPlace();
      const stuck = { doubt: 'stuck at 85' };
      await readings.add(place, [reading(0, 20), reading(1, 85, stuck), reading(60, 85, stuck)]);
      expect(await readings.hourly(place, always)).toEqual([
        { sensorId: 'bench', hourMs: noon, count: 1, meanC: 20, minC: 20, maxC: 20, doubted: 1 },
      ]);
    });

    it('rolls up again when a doubt is set and when it is taken back', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 20), reading(1, 40)]);
      const sun = { sensorId: 'bench', timeMs: noon + minuteMs };
      await readings.mark(place, [{ ...sun, doubt: 'in the sun' }]);
      expect(await readings.range(place, always)).toContainEqual(reading(1, 40, { doubt: 'in the sun' }));
      expect(await readings.hourly(place, always)).toMatchObject([{ count: 1, meanC: 20, doubted: 1 }]);
      await readings.mark(place, [sun]);
      expect(await readings.range(place, always)).toContainEqual(reading(1, 40));
      expect(await readings.hourly(place, always)).toMatchObject([{ count: 2, meanC: 30, doubted: 0 }]);
    });

    // Directive 2000/84/EC art. 3: summer time ends at 01:00 UTC on the last Sunday of October.
    it('keeps the two hours apart that a clock shows twice in autumn', async () => {
      const place = newPlace();
      const at = (time: string, temperatureC: number) =>
        reading(0, temperatureC, { timeMs: Date.parse(time) });
      await readings.add(place, [
        at('2026-10-25T02:10:00+02:00', 10),
        at('2026-10-25T02:50:00+02:00', 12),
        at('2026-10-25T02:10:00+01:00', 20),
        at('2026-10-25T03:10:00+01:00', 30),
      ]);
      const hours = await readings.hourly(place, always);
      expect(hours.map((h) => [new Date(h.hourMs).toISOString(), h.count, h.meanC])).toEqual([
        ['2026-10-25T00:00:00.000Z', 2, 11],
        ['2026-10-25T01:00:00.000Z', 1, 20],
        ['2026-10-25T02:00:00.000Z', 1, 30],
      ]);
    });

    it('knows the last reading of each sensor, whatever the order of arrival', async () => {
      const place = newPlace();
      const door = reading(3, 9, { sensorId: 'door', doubt: 'jump' });
      await readings.add(place, [reading(7, 22), reading(2, 19), door]);
      expect(await readings.latest(place)).toEqual([reading(7, 22), door]);
    });

    it('knows when its first reading was, whatever the order of arrival', async () => {
      const place = newPlace();
      expect(await readings.earliestMs(place)).toBeUndefined();
      await readings.add(place, [reading(7, 22), reading(2, 19), reading(3, 9, { sensorId: 'door' })]);
      expect(await readings.earliestMs(place)).toBe(noon + 2 * minuteMs);
    });

    it('settles calls made together each with its own result', async () => {
      const place = newPlace();
      const results = await Promise.all([
        readings.add(place, [reading(0, 1)]),
        readings.add(place, [reading(0, 1), reading(1, 2)]),
        readings.add(place, []),
      ]);
      expect(results.map((r) => [r.stored, r.duplicates])).toEqual([
        [1, 0],
        [1, 1],
        [0, 0],
      ]);
    });

    it('keeps what a mark for an unknown reading says to itself', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 20)]);
      await readings.mark(place, [{ sensorId: 'bench', timeMs: noon + 1, doubt: 'spike' }]);
      await readings.mark(place, [{ sensorId: 'door', timeMs: noon, doubt: 'spike' }]);
      expect(await readings.range(place, always)).toEqual([reading(0, 20)]);
      expect(await readings.latest(place)).toEqual([reading(0, 20)]);
      expect(await readings.hourly(place, always)).toMatchObject([{ count: 1, doubted: 0 }]);
    });

    it('gives numbers and words back to the last digit', async () => {
      const place = newPlace();
      const sent = [
        reading(0, 0.1 + 0.2, { humidityPct: 100 / 3 }),
        reading(1, -1e-7),
        reading(2, 20, { doubt: 'said "no", it\'s \\ off, by 2 = too much' }),
        reading(0, 1, { timeMs: Date.UTC(1999, 11, 31, 23, 59, 59, 999) }),
      ];
      await readings.add(place, sent);
      expect(await readings.range(place, always)).toEqual([sent[3], sent[0], sent[1], sent[2]]);
    });

    it('takes a year of readings at once and finds them in windows of any length', async () => {
      const place = newPlace();
      const quarters = Array.from({ length: 365 * 24 * 4 }, (_, i) => reading(15 * i, (i % 400) / 10));
      const added = await readings.add(place, quarters);
      expect(added).toEqual({ stored: quarters.length, duplicates: 0, conflicts: [] });
      expect(await readings.range(place, always)).toEqual(quarters);
      const hours = await readings.hourly(place, always);
      expect(hours).toHaveLength(365 * 24);
      expectRollups(hours, quarters);
      const june = { fromMs: Date.parse('2026-06-01T00:00:00Z'), toMs: Date.parse('2026-07-01T00:00:00Z') };
      expect(await readings.range(place, june)).toHaveLength(30 * 24 * 4);
      expect(await readings.hourly(place, june)).toHaveLength(30 * 24);
    });

    it('stores a delivery once that comes again with another time of arrival', async () => {
      const place = newPlace();
      const told: (boolean | undefined)[] = [];
      const deliver = (minute: number, again: boolean, packetId: number) =>
        readings.add(place, [reading(minute, 20)], {
          arrival: (added) => {
            told.push(added.deliveredBefore);
            const arrivedMs = noon + minute * minuteMs;
            return { placeId: place, topic: 't', arrivedMs, payloadStart: '20', readAs: 'read' };
          },
          delivery: { sender: 'board', packetId, sensorId: 'bench', content: '20', arrivedMs: noon, again },
        });
      await deliver(0, false, 1);
      expect(await deliver(1, true, 1)).toMatchObject({ stored: 0, duplicates: 1, deliveredBefore: true });
      await deliver(2, true, 2);
      await deliver(3, false, 1);
      expect((await readings.range(place, always)).map((r) => r.timeMs)).toEqual(
        [0, 2, 3].map((minute) => noon + minute * minuteMs),
      );
      expect(told).toEqual([undefined, true, undefined, undefined]);
    });

    it('samples: of each sensor the first believed reading of each stretch', async () => {
      const place = newPlace();
      await readings.add(place, [
        ...[0, 1, 9, 10, 19, 31].map((minute) => reading(minute, 20 + minute, { humidityPct: minute })),
        reading(0.5, 9, { sensorId: 'apex', doubt: 'spike' }),
        reading(3, 23, { sensorId: 'apex' }),
        reading(12, 32, { sensorId: 'apex', doubt: 'spike' }),
      ]);
      const kept = (from: number, to: number) =>
        readings.sampled(
          place,
          { fromMs: noon + from * minuteMs, toMs: noon + to * minuteMs },
          10 * minuteMs,
        );
      expect(await kept(0, 60)).toEqual([
        reading(0, 20, { humidityPct: 0 }),
        reading(3, 23, { sensorId: 'apex' }),
        reading(10, 30, { humidityPct: 10 }),
        reading(31, 51, { humidityPct: 31 }),
      ]);
      expect((await kept(1, 10)).map(({ timeMs }) => (timeMs - noon) / minuteMs)).toEqual([1, 3]);
      expect(await readings.doubted(place, { fromMs: noon, toMs: noon + 12 * minuteMs })).toEqual([
        reading(0.5, 9, { sensorId: 'apex', doubt: 'spike' }),
      ]);
    });

    it('samples the same as somebody who has all readings', async () => {
      await fc.assert(
        fc.asyncProperty(lopsidedReadings, fc.constantFrom(1, 10, 60), async (sent, minutes) => {
          const place = newPlace();
          await readings.add(place, sent);
          const taken = new Set<string>();
          const expected = [...sent].sort(byTimeThenSensor).filter(({ sensorId, timeMs, doubt }) => {
            const stretch = `${sensorId} ${Math.floor(timeMs / (minutes * minuteMs))}`;
            return doubt === undefined && !taken.has(stretch) && taken.add(stretch);
          });
          expect(await readings.sampled(place, always, minutes * minuteMs)).toEqual(expected);
          const notBelieved = sent.filter(({ doubt }) => doubt !== undefined).sort(byTimeThenSensor);
          expect(await readings.doubted(place, always)).toEqual(notBelieved);
        }),
        { seed: 20261125, numRuns: 30 },
      );
    });

    it('tells how much there is of each sensor: two-hour stretches, and the mean of its hours', async () => {
      const place = newPlace();
      // Noon begins a stretch. The floor is silent from 14:00 to 16:00; the apex is not believed in its third hour.
      const all = [
        ...[0, 30, 60, 120, 180].map((minute) => reading(minute, minute === 0 ? 10 : 20)),
        ...[0, 240].map((minute) => reading(minute, 15, { sensorId: 'floor' })),
        ...[0, 60].map((minute) => reading(minute, 18, { sensorId: 'apex' })),
        reading(120, 60, { sensorId: 'apex', doubt: 'spike' }),
      ];
      await readings.add(place, all);
      expect(await readings.standings(place)).toEqual([
        { sensorId: 'apex', coveredMs: 2 * hourMs, meanC: 18 },
        { sensorId: 'bench', coveredMs: 4 * hourMs, meanC: (15 + 20 + 20 + 20) / 4 },
        { sensorId: 'floor', coveredMs: 4 * hourMs, meanC: 15 },
      ]);
    });

    it('names the places that have readings', async () => {
      const [place, cleared] = [newPlace(), newPlace()];
      await readings.add(place, [reading(0, 1)]);
      await readings.add(cleared, [reading(0, 1)]);
      await readings.clear(cleared);
      const named = await readings.places();
      expect(named).toContain(place);
      expect(named).not.toContain(cleared);
      expect(named).toEqual([...named].sort());
    });

    it('takes readings again for a place that was forgotten', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 1), reading(1, 2)]);
      await readings.clear(place);
      expect(await readings.add(place, [reading(0, 3)])).toEqual({ stored: 1, duplicates: 0, conflicts: [] });
      expect(await readings.range(place, always)).toEqual([reading(0, 3)]);
      expect(await readings.hourly(place, always)).toMatchObject([{ count: 1, meanC: 3 }]);
    });

    it('forgets one place wholly and no other', async () => {
      const [place, other] = [newPlace(), newPlace()];
      await readings.add(place, [reading(0, 1)]);
      await readings.add(other, [reading(0, 2)]);
      await readings.clear(place);
      expect(await readings.range(place, always)).toEqual([]);
      expect(await readings.hourly(place, always)).toEqual([]);
      expect(await readings.range(other, always)).toHaveLength(1);
    });

    it('gives one content and one roll-up for any order and repetition of batches', async () => {
      await fc.assert(
        fc.asyncProperty(lopsidedReadings, fc.infiniteStream(fc.nat()), async (sent, choices) => {
          const place = newPlace();
          for (const batch of shuffledBatches(sent, choices)) await readings.add(place, batch);
          expect(await readings.range(place, always)).toEqual([...sent].sort(byTimeThenSensor));
          const hours = await readings.hourly(place, always);
          const inOrder = newPlace();
          await readings.add(inOrder, [...sent].sort(byTimeThenSensor));
          expect(hours).toEqual(await readings.hourly(inOrder, always));
          expectRollups(hours, sent);
        }),
        { seed: 20260513, numRuns: 60 },
      );
    });

    it('has every acknowledged reading exactly once after the writer is ended in mid-write', async () => {
      const acknowledged = await endedAfter(subject.endlessWriter, 300);
      readings = await subject.reopen();
      const kept = await readings.range(acknowledged[0]!.place, always);
      const keys = kept.map((r) => `${r.sensorId} ${r.timeMs} ${r.temperatureC}`);
      expect(new Set(keys).size).toBe(keys.length);
      expect(keys).toEqual(expect.arrayContaining(acknowledged.map((r) => r.key)));
      expectRollups(await readings.hourly(acknowledged[0]!.place, always), kept);
    });

    it('has everything after closing and opening again', async () => {
      const place = newPlace();
      await readings.add(place, [reading(0, 20), reading(61, 30, { humidityPct: 40 })]);
      const [content, hours] = [await readings.range(place, always), await readings.hourly(place, always)];
      readings = await subject.reopen();
      expect(await readings.range(place, always)).toEqual(content);
      expect(await readings.hourly(place, always)).toEqual(hours);
      expect((await readings.add(place, [reading(0, 20)])).duplicates).toBe(1);
    });
  });
}

/** Distinct instants of up to three sensors over some hours, uneven, some doubted; temperature in tenths. */
const lopsidedReadings = fc.uniqueArray(
  fc
    .record({
      sensorId: fc.constantFrom('bench', 'bench', 'bench', 'door', 'apex'),
      second: fc.nat(4 * 3600),
      tenths: fc.integer({ min: -300, max: 650 }),
      doubted: fc.constantFrom(false, false, false, true),
    })
    .map(
      ({ sensorId, second, tenths, doubted }): StoredReading => ({
        sensorId,
        timeMs: noon + second * 1000,
        temperatureC: tenths / 10,
        ...(doubted && { doubt: 'jump' }),
      }),
    ),
  { maxLength: 60, selector: (r) => `${r.sensorId} ${r.timeMs}` },
);

function byTimeThenSensor(a: StoredReading, b: StoredReading): number {
  return a.timeMs - b.timeMs || (a.sensorId < b.sensorId ? -1 : 1);
}

/** All readings, some of them twice, in random order and in batches of random size. */
function shuffledBatches(sent: StoredReading[], choices: fc.Stream<number>): StoredReading[][] {
  const twice = [...sent, ...sent.filter(() => choices.next().value! % 3 === 0)];
  const shuffled = twice.map((r) => ({ r, rank: choices.next().value! })).sort((a, b) => a.rank - b.rank);
  const batches: StoredReading[][] = [[]];
  for (const { r } of shuffled) {
    if (choices.next().value! % 4 === 0) batches.push([]);
    batches.at(-1)!.push(r);
  }
  return batches;
}

function expectRollups(hours: Awaited<ReturnType<Readings['hourly']>>, sent: StoredReading[]): void {
  const groups = new Map<string, StoredReading[]>();
  for (const r of sent) groups.set(hourKey(r), [...(groups.get(hourKey(r)) ?? []), r]);
  const expected = [...groups.values()].filter((group) => group.some((r) => !r.doubt));
  expect(hours).toHaveLength(expected.length);
  for (const group of expected) {
    const believed = group.filter((r) => !r.doubt).map((r) => r.temperatureC);
    const hour = hours.find((h) => `${h.sensorId} ${h.hourMs / hourMs}` === hourKey(group[0]!))!;
    expect(hour.count).toBe(believed.length);
    expect(hour.doubted).toBe(group.length - believed.length);
    expect([hour.minC, hour.maxC]).toEqual([Math.min(...believed), Math.max(...believed)]);
    expect(hour.meanC).toBeCloseTo(believed.reduce((a, b) => a + b, 0) / believed.length, 9);
  }
}

function hourKey(r: StoredReading): string {
  return `${r.sensorId} ${Math.floor(r.timeMs / hourMs)}`;
}

/** Starts the writer, ends it with SIGKILL upon its `lines`th acknowledgement; everything it had printed. */
async function endedAfter(command: string[], lines: number): Promise<{ place: string; key: string }[]> {
  const child = spawn(command[0]!, command.slice(1), { stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise<NodeJS.Signals | null>((resolve) =>
    child.once('close', (_, signal) => resolve(signal)),
  );
  const acknowledged: { place: string; key: string }[] = [];
  for await (const line of createInterface({ input: child.stdout })) {
    const { place, sensorId, timeMs, temperatureC } = JSON.parse(line);
    acknowledged.push({ place, key: `${sensorId} ${timeMs} ${temperatureC}` });
    if (acknowledged.length === lines) child.kill('SIGKILL');
  }
  expect(await ended).toBe('SIGKILL');
  expect(acknowledged.length).toBeGreaterThanOrEqual(lines);
  return acknowledged;
}
