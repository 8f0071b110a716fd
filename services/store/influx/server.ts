/**
 * One InfluxDB 1.x server, spoken to through its client. Two kinds of trouble are told apart: the server is
 * away (try again later) and the server will not have these points (trying again changes nothing).
 */
import { InfluxDB, type IPoint } from 'influx';

/** No answer, or one that says nothing about the points: the same request may work later. */
export class ServerAway extends Error {}
/** The server read the points and will not take at least one of them. */
export class PointsRefused extends Error {}

/** One series of an answer: its tags, and rows of values in the order of `columns`; `time` is in ms. */
export interface Series {
  tags?: Record<string, string>;
  columns: string[];
  values: (number | string | boolean | null)[][];
}

export interface InfluxServer {
  host: string;
  /** The series of each statement. Throws ServerAway. */
  ask(statements: readonly string[], limitMs?: number): Promise<Series[][]>;
  /** Resolves when the server has synced the points to its disk. Throws ServerAway or PointsRefused. */
  write(points: IPoint[]): Promise<void>;
}

interface Answer {
  results?: { series?: Series[]; error?: string }[];
}

const usualLimitMs = 30_000;
// Statements of one request; more of them only make its text longer.
const statementsAtOnce = 500;

/**
 * Prepares a connection; nothing is sent yet. The path of the address names the database (`glasstide`
 * when there is none), which is made with the first request.
 */
export function connectInflux(address: string): InfluxServer {
  const url = new URL(address);
  const database = decodeURIComponent(url.pathname.slice(1)) || 'glasstide';
  const protocol = url.protocol === 'https:' ? 'https' : 'http';
  const influx = new InfluxDB({
    host: url.hostname.replace(/^\[|\]$/g, ''),
    port: Number(url.port) || (protocol === 'https' ? 443 : 8086),
    protocol,
    database,
    ...(url.username && {
      username: decodeURIComponent(url.username),
      password: decodeURIComponent(url.password),
    }),
    // When to try again is for the spool to say; the client's own pauses would come on top of it.
    pool: { maxRetries: 0, backoff: noPause, requestTimeout: usualLimitMs },
  });
  let made: Promise<unknown> | undefined;

  /** A user who may only write cannot make the database; then it is there already, or the request will say so. */
  async function readily<T>(limitMs: number, request: () => Promise<T>): Promise<T> {
    try {
      made ??= influx.createDatabase(database).catch((error) => {
        if (statusOf(error) === undefined) throw error;
      });
      await within(limitMs, made);
      return await within(limitMs, request());
    } catch (error) {
      made = undefined;
      throw error instanceof PointsRefused ? error : new ServerAway(wordsOf(error), { cause: error });
    }
  }

  async function askSome(statements: readonly string[], limitMs: number): Promise<Series[][]> {
    const { results = [] } = await readily<Answer>(limitMs, () =>
      influx.queryRaw([...statements], { precision: 'ms', method: 'POST' }),
    );
    const error = results.find((result) => result.error !== undefined)?.error;
    if (error === undefined) return results.map(({ series = [] }) => series);
    made = undefined;
    throw new ServerAway(error);
  }

  return {
    host: url.host,
    async ask(statements, limitMs = usualLimitMs) {
      const answers: Series[][] = [];
      for (let start = 0; start < statements.length; start += statementsAtOnce) {
        answers.push(...(await askSome(statements.slice(start, start + statementsAtOnce), limitMs)));
      }
      return answers;
    },
    write: (points) =>
      readily(usualLimitMs, () =>
        influx.writePoints(points, { precision: 'ms' }).catch((error) => {
          const status = statusOf(error);
          throw status === 400 || status === 413 ? new PointsRefused(wordsOf(error)) : error;
        }),
      ),
  };
}

const noPause = { getDelay: () => 0, next: () => noPause, reset: () => noPause };

/** The client waits for ever when a connection ends in the middle of an answer; we do not. */
function within<T>(limitMs: number, work: Promise<T>): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`no answer within ${limitMs / 1000} s`)), limitMs);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/** The status of an answer that is not 2xx; undefined when there was no answer. */
function statusOf(error: unknown): number | undefined {
  const { res } = error as { res?: { statusCode?: number } };
  return res?.statusCode;
}

function wordsOf(error: unknown): string {
  const { message = '', code } = error as { message?: string; code?: string };
  const said = /"error":"((?:[^"\\]|\\.)*)"/.exec(message)?.[1];
  return said ?? (message || code || String(error));
}
