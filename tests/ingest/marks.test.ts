import { expect, it, vi } from 'vitest';
import { createMarks } from '../../services/ingest/marks.ts';
import type { Readings } from '../../services/store/store.ts';
import { openHouse, placeId, startMs } from './station.ts';

const minuteMs = 60_000;

it('a mark that could not be kept ends nothing, is told, and is set with the next arrival', async () => {
  const store = openHouse();
  let full = true;
  const mark: Readings['mark'] = (...marks) =>
    full ? Promise.reject(new Error('disk full')) : store.readings.mark(...marks);
  const marked: string[] = [];
  const readings = { ...store.readings, mark };
  const marks = createMarks({ ...store, readings }, (place) => marked.push(place));
  const temperaturesC = [14, 14.1, 44, 14.2, 14.3];
  await store.readings.add(
    placeId,
    temperaturesC.map((temperatureC, i) => ({
      sensorId: 'bench',
      timeMs: startMs + i * minuteMs,
      temperatureC,
    })),
  );
  const span = { fromMs: startMs, toMs: startMs + 4 * minuteMs };

  marks.look(placeId, span);
  await marks.idle();
  expect([marked, marks.trouble()]).toEqual([[], expect.stringContaining('disk full')]);

  full = false;
  const late = startMs + 40 * 24 * 60 * minuteMs;
  marks.look(placeId, { fromMs: late, toMs: late });
  await marks.idle();
  expect([marked, marks.trouble()]).toEqual([[placeId], undefined]);
  const doubts = (await store.readings.range(placeId, { fromMs: 0, toMs: late })).map(({ doubt }) => doubt);
  expect(doubts).toEqual([undefined, undefined, 'spike', undefined, undefined]);
  await store.close();
});

it('judges the first arrival at once, and what comes within the next minute together', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const store = openHouse();
  let looks = 0;
  const told: (() => void)[] = [];
  const range: Readings['range'] = (...window) => {
    looks += 1;
    told.shift()?.();
    return store.readings.range(...window);
  };
  const nextLook = () => new Promise<void>((resolve) => told.push(resolve));
  const marks = createMarks({ ...store, readings: { ...store.readings, range } }, () => {});
  const span = { fromMs: startMs, toMs: startMs };
  marks.look(placeId, span);
  await marks.idle();
  expect(looks).toBe(1);
  for (let i = 0; i < 5; i++) marks.look(placeId, span);
  vi.advanceTimersByTime(minuteMs - 1);
  expect(looks).toBe(1);
  const looked = nextLook();
  vi.advanceTimersByTime(1);
  await looked;
  await marks.idle();
  expect(looks).toBe(2);
  marks.look(placeId, span);
  // Who asks for it does not wait for the minute.
  await marks.idle();
  expect(looks).toBe(3);
  vi.useRealTimers();
  await store.close();
});
