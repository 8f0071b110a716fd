/** One season played again and again with the same luck: by habit, by rule, by the advice, and by the best plan found in hindsight. */
import {
  type Advice,
  adviseFrom,
  type EnemyId,
  type Fit,
  fit as fitSeason,
  type ReleasePlan,
  type Supplier,
} from '../services/model/index.ts';
import { startGarden, type VirtualGarden, weekMs } from '../simulators/startGarden.ts';
import { trialByName } from '../simulators/trials.ts';
import { type Adviser, byTheCalendar, byTheRule, type Choice, type Parcel, whenItIsBad } from './advisers.ts';
import { harmByDays, harmOf } from './loss.ts';
import { type Plan, plansFor } from './plans.ts';

export interface AdviceTask {
  trial: string;
  seed: number;
  members: number;
  /** Weeks after which the season ends; the whole one when left out. */
  weeks?: number;
  /** Whether the best plan is looked for in hindsight; true when left out. */
  searched?: boolean;
}

export interface Played {
  harm: number;
  /** By another law than the advice reckons with. */
  harmByDays: number;
  money: number;
  parcels: number;
}

export interface AdviceScore {
  task: AdviceTask;
  never: Played;
  calendar: Played;
  threshold: Played;
  rule: Played;
  advice: Played;
  best?: Played;
  bestPlan?: string;
  /** Nothing to harm ever came in. */
  pestFree: boolean;
  seconds: number;
}

export const lossOf = ({ harm, money }: Played) => harm + money;
/** Soap and an hour's work: judgement. */
const washCosts = 2;
const dayMs = 86_400_000;

export function playAdvice(task: AdviceTask, clock: () => number): AdviceScore {
  const from = clock();
  const by = (adviser: Adviser) => play(task, adviser);
  const never = by(() => ({ parcels: [] }));
  const score: AdviceScore = {
    task,
    never,
    calendar: by(byTheCalendar()),
    threshold: by(whenItIsBad),
    rule: by(byTheRule),
    advice: by(followed(task.members)),
    pestFree: never.harm === 0 && isPestFree(task),
    seconds: 0,
  };
  const found = task.searched === false ? {} : bestOf(task, score);
  return { ...score, ...found, seconds: Math.round((clock() - from) / 100) / 10 };
}

function newSeason({ trial, seed }: AdviceTask): VirtualGarden {
  const { grower, ...scenario } = trialByName(trial);
  const { calendar: _, ...habits } = grower;
  return startGarden({ ...scenario, grower: habits }, seed);
}

function isPestFree(task: AdviceTask): boolean {
  return trialByName(task.trial).visitors.length === 0;
}

/** Plays the season, asking after every round; stops where it has lost more than `mostLost`, as no loss is made good. */
function play(task: AdviceTask, adviser: Adviser, mostLost = Number.POSITIVE_INFINITY): Played {
  const garden = newSeason(task);
  const spent = { money: 0, parcels: 0 };
  const weeks = Math.min(garden.weeks, task.weeks ?? garden.weeks);
  while (garden.week() < weeks) {
    garden.advanceWeek();
    if (garden.week() < weeks) carryOut(garden, adviser(garden.season(), garden.nowMs()), spent);
    if (harmOf(garden.truth) + spent.money > mostLost) break;
  }
  return { harm: harmOf(garden.truth), harmByDays: harmByDays(garden.truth), ...spent };
}

/** Orders in one delivery with one fee, washes today. */
function carryOut(garden: VirtualGarden, choice: Choice, spent: { money: number; parcels: number }) {
  if (choice.wash) {
    garden.act({ do: 'wash', kind: 'soap', coveredShare: 0.8 });
    spent.money += washCosts;
  }
  if (choice.parcels.length === 0) return;
  const { supplier } = garden.garden.scenario.place;
  spent.money += supplier!.parcelFee;
  spent.parcels += 1;
  for (const { enemy, number, arrivesOn } of choice.parcels as (Parcel & { arrivesOn?: string })[]) {
    const price = number * (supplier!.pricePerAnimal[enemy] ?? 0);
    spent.money += price;
    const atMs = arrivesOn ? Date.parse(`${arrivesOn}T09:00:00Z`) : nextDelivery(supplier!, garden.nowMs());
    garden.act({ do: 'release', enemy, number, atMs, price });
  }
}

/** First delivery day after the lead time, in the morning. */
function nextDelivery({ leadDays, deliveryWeekdays }: Supplier, nowMs: number): number {
  for (let days = leadDays; ; days += 1) {
    const weekday = new Date(nowMs + days * dayMs).getUTCDay() || 7;
    if (deliveryWeekdays.includes(weekday)) return nowMs + days * dayMs;
  }
}

/** Does what the advice says, to the letter. */
function followed(members: number): Adviser {
  let earlier: Fit | undefined;
  return (season, nowMs) => {
    const asOf = new Date(nowMs).toISOString();
    earlier = fitSeason(season, asOf, { members, ...(earlier ? { earlier } : {}) });
    const advice = adviseFrom(season, earlier, asOf);
    return { parcels: parcelsOf(advice), wash: washes(advice) };
  };
}

const washes = ({ decision, washFirst, toOrder = [] }: Advice): boolean =>
  decision === 'wash' || washFirst === true || toOrder.some((parcel) => parcel.washFirst === true);

/** Every parcel wanted now, one of an enemy for all pests it hunts; each comes when the advice says. */
function parcelsOf(advice: Advice): (Parcel & { arrivesOn?: string })[] {
  const buys = advice.decision === 'order' || advice.decision === 'top-up';
  const plans = advice.toOrder ?? (buys && advice.plan ? [advice.plan] : []);
  const largest = new Map<EnemyId, ReleasePlan>();
  for (const plan of plans) {
    if (plan.number > (largest.get(plan.enemy)?.number ?? 0)) largest.set(plan.enemy, plan);
  }
  return [...largest.values()].map(({ enemy, number, arrivesOn, windowFrom }) => ({
    enemy,
    number,
    arrivesOn: arrivesOn ?? windowFrom,
  }));
}

/** The cheapest of many plans and of all the others, known only when the season is over. */
function bestOf(task: AdviceTask, score: AdviceScore): Pick<AdviceScore, 'best' | 'bestPlan'> {
  const { never, calendar, threshold, rule, advice } = score;
  if (never.harm === 0) return { best: never, bestPlan: 'never' };
  let best = Object.entries({ never, calendar, threshold, rule, advice })
    .map(([name, played]): { name: string; played: Played; plan?: Plan } => ({ name, played }))
    .reduce((least, one) => (lossOf(one.played) < lossOf(least.played) ? one : least));
  const tryOut = (plan: Plan) => {
    const played = play(task, byPlan(task, plan), lossOf(best.played));
    if (lossOf(played) < lossOf(best.played)) best = { name: plan.name, played, plan };
  };
  for (const plan of plansFor(trialByName(task.trial).place)) tryOut(plan);
  if (best.plan) tryOut({ ...best.plan, name: `${best.plan.name}, washed`, washed: true });
  return { best: best.played, bestPlan: best.name };
}

const byPlan =
  (task: AdviceTask, { orders, washed }: Plan): Adviser =>
  (_, nowMs) => {
    const parcels = orders.flatMap(({ week, parcel }) => (isWeek(task, nowMs, week) ? [parcel] : []));
    return { parcels, wash: washed === true && parcels.length > 0 };
  };

const isWeek = ({ trial }: AdviceTask, nowMs: number, week: number) =>
  Math.round((nowMs - Date.parse(trialByName(trial).startsAt)) / weekMs) === week;
