/** What the server has already of readings that come in, asked once for all that come while it answers. */
import type { StoredReading } from '../store.ts';
import { hourOf, readingKey } from './hours.ts';
import { readingsIn, readingsOf, type Span } from './points.ts';
import type { InfluxServer } from './server.ts';

/** A sender waits for this answer, so it must not take long; without it counts are less exact, and nothing else. */
const limitMs = 2000;

interface Question {
  placeId: string;
  readings: readonly StoredReading[];
  answer(known: Map<string, StoredReading>): void;
  fail(error: unknown): void;
}

export interface Foreknowledge {
  /** The known readings among these, by sensor and time. Throws ServerAway. */
  of(placeId: string, readings: readonly StoredReading[]): Promise<Map<string, StoredReading>>;
}

export function createForeknowledge(server: InfluxServer): Foreknowledge {
  let questions: Question[] = [];
  let asking = false;

  async function askOn(): Promise<void> {
    asking = true;
    while (questions.length > 0) {
      const batch = questions;
      questions = [];
      await askAll(server, batch);
    }
    asking = false;
  }

  return {
    of: (placeId, readings) =>
      new Promise((answer, fail) => {
        questions.push({ placeId, readings, answer, fail });
        // After what else this tick brings.
        if (!asking && questions.length === 1) setImmediate(() => void askOn());
      }),
  };
}

async function askAll(server: InfluxServer, batch: readonly Question[]): Promise<void> {
  const spans = batch.flatMap(({ placeId, readings }, question) =>
    spansOf(readings).map((span) => ({ question, statement: readingsIn(placeId, span) })),
  );
  try {
    const answers = await server.ask(
      spans.map(({ statement }) => statement),
      limitMs,
    );
    const known = batch.map(() => new Map<string, StoredReading>());
    for (const [index, { question }] of spans.entries()) {
      for (const reading of readingsOf(answers[index] ?? []))
        known[question]?.set(readingKey(reading), reading);
    }
    for (const [index, question] of batch.entries()) question.answer(known[index] ?? new Map());
  } catch (error) {
    for (const question of batch) question.fail(error);
  }
}

/** For each sensor and hour, the stretch between its first and last reading. */
function spansOf(readings: readonly StoredReading[]): Span[] {
  const spans = new Map<string, Span>();
  for (const { sensorId, timeMs } of readings) {
    const key = `${sensorId} ${hourOf(timeMs)}`;
    const { fromMs = timeMs, toMs = timeMs } = spans.get(key) ?? {};
    spans.set(key, { sensorId, fromMs: Math.min(fromMs, timeMs), toMs: Math.max(toMs, timeMs + 1) });
  }
  return [...spans.values()];
}
