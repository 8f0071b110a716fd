/**
 * Doubts that only the neighbours reveal: a spike that returned, a stuck or sunlit sensor. Looked at
 * again after each arrival around its time, so that late readings mend marks as well.
 */
import { findDoubts } from '../model/index.ts';
import type { Store, StoredReading } from '../store/store.ts';

const hourMs = 3_600_000;
/** A reading may change the doubts of those this near (the longest rule looks at 12 h) ... */
const reachMs = 12 * hourMs;
/** ... which are themselves judged by readings this near to them. */
const evidenceMs = 12 * hourMs;
/** A look reads two days of a place, so what comes within a minute is looked at together. */
const restMs = 60_000;

interface Span {
  fromMs: number;
  toMs: number;
}

export interface Marks {
  /** Asks for the readings from `fromMs` to `toMs` and their neighbours to be judged again within a minute. */
  look(placeId: string, span: Span): void;
  /** A sentence for the owner while the last judgement could not be kept. */
  trouble(): string | undefined;
  /** Judges at once what waits; resolves when nothing is left to look at. */
  idle(): Promise<void>;
}

/** Marks in the background, one place after the other; what arrives meanwhile is judged together. */
export function createMarks(store: Store, onMarked: (placeId: string) => void): Marks {
  const waiting = new Map<string, Span>();
  let work: Promise<void> | undefined;
  let rest: NodeJS.Timeout | undefined;
  let trouble: string | undefined;

  async function lookAtAll(): Promise<void> {
    for (let next = takeFirst(waiting); next; next = takeFirst(waiting)) {
      if (!(await lookAt(...next))) return;
    }
  }

  /** What cannot be kept now (a full disk) is looked at again with the next arrival. */
  async function lookAt(placeId: string, span: Span): Promise<boolean> {
    try {
      if ((await markAround(store, placeId, span)) > 0) onMarked(placeId);
      trouble = undefined;
      return true;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      trouble = `Readings of ${placeId} could not be looked over for faults (${why}). The next one tries again.`;
      waiting.set(placeId, joined(waiting.get(placeId), span));
      return false;
    }
  }

  function start(): void {
    clearTimeout(rest);
    rest = undefined;
    if (waiting.size === 0) return;
    work ??= lookAtAll().finally(() => {
      work = undefined;
      rest = setTimeout(start, restMs);
      rest.unref();
    });
  }

  return {
    look(placeId, span) {
      waiting.set(placeId, joined(waiting.get(placeId), span));
      if (!rest) start();
    },
    trouble: () => trouble,
    async idle() {
      start();
      while (work) await work;
    },
  };
}

/** Sets and clears the doubts near a span; returns how many changed. */
async function markAround(store: Store, placeId: string, { fromMs, toMs }: Span): Promise<number> {
  const place = store.records.get('place', placeId, placeId)?.data;
  const within = { fromMs: fromMs - reachMs, toMs: toMs + reachMs + 1 };
  const window = { fromMs: within.fromMs - evidenceMs, toMs: within.toMs + evidenceMs };
  const readings = await store.readings.range(placeId, window);
  const doubts = new Map(findDoubts(readings, place).map((doubted) => [keyOf(doubted), doubted.doubt]));
  const marks = readings
    .filter(({ timeMs }) => timeMs >= within.fromMs && timeMs < within.toMs)
    .filter((reading) => doubts.get(keyOf(reading)) !== reading.doubt)
    .map((reading) => markOf(reading, doubts.get(keyOf(reading))));
  if (marks.length > 0) await store.readings.mark(placeId, marks);
  return marks.length;
}

function markOf({ sensorId, timeMs }: StoredReading, doubt: string | undefined) {
  return { sensorId, timeMs, ...(doubt !== undefined && { doubt }) };
}

function keyOf({ sensorId, timeMs }: { sensorId: string; timeMs: number }): string {
  return `${sensorId} ${timeMs}`;
}

function joined(known: Span | undefined, span: Span): Span {
  if (!known) return span;
  return { fromMs: Math.min(known.fromMs, span.fromMs), toMs: Math.max(known.toMs, span.toMs) };
}

function takeFirst(waiting: Map<string, Span>): [string, Span] | undefined {
  const [first] = waiting;
  if (first) waiting.delete(first[0]);
  return first;
}
