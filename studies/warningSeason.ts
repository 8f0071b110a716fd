/** One season played by a grower who follows the advice and orders on the last day; kept is what was entered and what was issued. */
import {
  type Advice,
  adviseFrom,
  atLocalHour,
  type Fit,
  type Forecast,
  fit as fitSeason,
  type ReleasePlan,
  type Season,
  type Supplier,
} from '../services/model/index.ts';
import type { Scenario } from '../simulators/scenario.ts';
import { startGarden, type VirtualGarden, weekMs } from '../simulators/startGarden.ts';
import { trialByName } from '../simulators/trials.ts';

export interface WarningTask {
  trial: string;
  seed: number;
  members: number;
  /** Weeks after which the season ends; the whole one when left out. */
  weeks?: number;
}

/** A forecast as it was issued, without what no warning is made of. */
export interface Issue {
  asOfMs: number;
  forecast: Forecast;
  advice: Advice;
}

export interface Diary {
  task: WarningTask;
  weeks: number;
  /** All that was entered, each with its time; readings are left out, the garden gives them again. */
  season: Season;
  issued: Issue[];
}

export type Wanted = ReleasePlan & { orderBy: string };

const morningHour = 5;
const orderingHour = 9;
const arrivalHour = 10;

/** By turns: days of the test bed, a longer way with an ordinary week, one delivery a week. Invented. */
const days: readonly Partial<Supplier>[] = [
  {},
  { leadDays: 5, orderWeekdays: [1, 2, 3, 4, 5], deliveryWeekdays: [2, 3, 4, 5] },
  { leadDays: 3, cutoffHour: 15, orderWeekdays: [1, 2, 3, 4, 5], deliveryWeekdays: [3] },
];

/** The season of a task without the parcels some kinds bring along: the advice sees to those. */
export function scenarioOf({ trial, seed }: WarningTask): Scenario {
  const { grower, place, ...scenario } = trialByName(trial);
  const { calendar: _, ...habits } = grower;
  const supplier = { ...place.supplier!, ...days[seed % days.length] };
  return { ...scenario, grower: habits, place: { ...place, supplier } };
}

/** Every parcel an advice wants now, with its last day; one enemy for two pests is bought once. */
export function wantedOf({ decision, plan, toOrder }: Advice): Wanted[] {
  const buys = decision === 'order' || decision === 'top-up';
  const plans = toOrder ?? (buys && plan ? [plan] : []);
  const largestFirst = [...plans].sort((a, b) => b.number - a.number);
  return largestFirst.flatMap((each, n) => {
    const isLargest = largestFirst.findIndex(({ enemy }) => enemy === each.enemy) === n;
    return isLargest && each.orderBy !== undefined ? [{ ...each, orderBy: each.orderBy }] : [];
  });
}

/** Plays the season; a forecast is made at each count and entry, and on the morning of the last day to order. */
export function playWarned(task: WarningTask): Diary {
  const scenario = scenarioOf(task);
  const { timeZone } = scenario.place;
  const garden = startGarden(scenario, task.seed);
  const startMs = garden.nowMs();
  const weeks = Math.min(garden.weeks, task.weeks ?? garden.weeks);
  const issued: Issue[] = [];
  const arrivals: number[] = [];
  const ask = forecaster(garden, task.members);
  const issue = () => {
    issued.push(ask());
    return issued.at(-1)!.advice;
  };

  const act = (advice: Advice) => {
    const nowMs = garden.nowMs();
    const due = wantedOf(advice).filter(
      ({ orderBy }) => atLocalHour(orderBy, orderingHour, timeZone) <= nowMs,
    );
    const isCount = (nowMs - startMs) % weekMs === 0;
    const washes = isCount && advice.decision === 'wash';
    if (washes) garden.act({ do: 'wash', kind: 'soap', coveredShare: 0.8 });
    for (const { enemy, number, arrivesOn, windowFrom, price } of due) {
      const atMs = atLocalHour(arrivesOn ?? windowFrom, arrivalHour, timeZone);
      arrivals.push(atMs);
      garden.act({ do: 'release', enemy, number, atMs, ...(price === undefined ? {} : { price }) });
    }
    if (washes || due.length > 0) issue();
  };
  /** Next hour before the round at which something is to be done. */
  const nextStop = (): number => {
    const lastDays = wantedOf(issued.at(-1)!.advice).map(({ orderBy }) => orderBy);
    const hours = lastDays.flatMap((day) =>
      [morningHour, orderingHour].map((hour) => atLocalHour(day, hour, timeZone)),
    );
    const later = [...arrivals, ...hours].filter((ms) => ms > garden.nowMs());
    return Math.min(...later, Number.POSITIVE_INFINITY);
  };

  while (garden.week() < weeks) {
    const roundMs = startMs + (garden.week() + 1) * weekMs;
    for (let ms = issued.length > 0 ? nextStop() : roundMs; ms < roundMs; ms = nextStop()) {
      garden.advanceTo(ms);
      const wasAsked = issued.at(-1)!;
      const isOrdering = wantedOf(wasAsked.advice).some(
        ({ orderBy }) => atLocalHour(orderBy, orderingHour, timeZone) === ms,
      );
      act(isOrdering ? wasAsked.advice : issue());
    }
    garden.advanceWeek();
    act(issue());
  }
  return { task, weeks, season: { ...garden.season(), readings: [] }, issued };
}

/** Each forecast goes on from the one before. */
function forecaster(garden: VirtualGarden, members: number): () => Issue {
  let earlier: Fit | undefined;
  return () => {
    const asOfMs = garden.nowMs();
    const asOf = new Date(asOfMs).toISOString();
    const season = garden.season();
    earlier = fitSeason(season, asOf, { members, ...(earlier ? { earlier } : {}) });
    return { asOfMs, ...trimmed(earlier.forecast, adviseFrom(season, earlier, asOf)) };
  };
}

const trimmed = (forecast: Forecast, advice: Advice): Omit<Issue, 'asOfMs'> => ({
  forecast: {
    ...forecast,
    ledger: [],
    temperature: { days: [], outlook: forecast.temperature.outlook },
    pests: forecast.pests.map((pest) => ({ ...pest, past: [], waves: [], enemies: [] })),
  },
  advice: { ...advice, candidates: advice.candidates.map((each) => ({ ...each, weeks: [] })) },
});
