/** Judges what a grower was told: in time, how often, and whether one message speaks against another. */
import { atLocalHour, type EnemyId } from '../services/model/index.ts';
import { type Diary, type WarningTask, wantedOf } from './warningSeason.ts';
import type { Left, Told } from './warningTelling.ts';

const dayMs = 86_400_000;
/** To go to the telephone on a working day (issue: warned three days ahead). */
export const daysNeeded = 3;
/** Two messages so near are read together. */
const pairDays = 3;

export interface Deadline {
  enemy: EnemyId;
  orderBy: string;
  /** Days from the first advice that named it, and from the first message, to the supplier's hour. */
  knownDays: number;
  toldDays: Record<Left['channel'], number | undefined>;
}

/** A message that speaks against one of at most three days before. */
export interface Pair {
  channel: Left['channel'];
  what: 'no-longer-wanted' | 'wanted-again';
  about: string;
  /** The later message names the earlier and says why it no longer holds. */
  explained: boolean;
}

export interface WarningScore {
  task: WarningTask;
  weeks: number;
  deadlines: Deadline[];
  pairs: Pair[];
  /** Messages on each way, and how many of them were letters. */
  messages: Record<Left['channel'], number>;
  letters: number;
  /** Things told by rule, to the phone. */
  told: Record<string, number>;
}

export function scoreTold(diary: Diary, told: Told): WarningScore {
  const { task, weeks } = diary;
  const sent = (channel: Left['channel']) => told.messages.filter((each) => each.channel === channel).length;
  return {
    task,
    weeks,
    deadlines: deadlinesOf(diary, told),
    pairs: (['mail', 'push'] as const).flatMap((channel) => pairsOf(diary, told, channel)),
    messages: { mail: sent('mail'), push: sent('push') },
    letters: told.left.filter(({ event }) => event === 'letter').length,
    told: byRule(told),
  };
}

/** Of every parcel that was ordered: the grower orders on the last day, so that none passes unused. */
export function deadlinesOf({ season, issued }: Diary, { left }: Pick<Told, 'left'>): Deadline[] {
  const { timeZone, supplier } = season.place;
  return season.orders.flatMap(({ enemy, orderedAt }) => {
    const orderedMs = Date.parse(orderedAt);
    const naming = issued.filter(({ asOfMs }) => asOfMs <= orderedMs);
    const asked = naming.flatMap(({ advice }) => wantedOf(advice)).filter((each) => each.enemy === enemy);
    const orderBy = asked.at(-1)?.orderBy;
    if (orderBy === undefined) return [];
    const deadlineMs = atLocalHour(orderBy, supplier!.cutoffHour, timeZone);
    const ahead = (ms: number) => (deadlineMs - ms) / dayMs;
    const first = naming.find(({ advice }) =>
      wantedOf(advice).some((each) => each.enemy === enemy && each.orderBy === orderBy),
    );
    const toldOn = (channel: Left['channel']) => {
      const message = left.find(
        (each) =>
          each.channel === channel &&
          each.event === 'raised' &&
          each.about.startsWith(`order-by-${enemy}-${orderBy}@`),
      );
      return message && ahead(message.atMs);
    };
    const toldDays = { mail: toldOn('mail'), push: toldOn('push') };
    return [{ enemy, orderBy, knownDays: ahead(first!.asOfMs), toldDays }];
  });
}

/**
 * Contradictions: an order was asked for, and within three days a message leaves when it is no longer wanted though it
 * was neither made nor missed; or something told as no longer true is told anew within three days.
 */
export function pairsOf(
  { season, issued }: Pick<Diary, 'season' | 'issued'>,
  { left, warnings }: Pick<Told, 'left' | 'warnings'>,
  channel: Left['channel'],
): Pair[] {
  const mine = left.filter((each) => each.channel === channel);
  const endedOf = (about: string) => warnings.find(({ id }) => id === about.split('@')[0])?.ended ?? '';
  const isNear = (first: Left, second: Left) =>
    second.atMs > first.atMs && second.atMs - first.atMs <= pairDays * dayMs;
  return mine.flatMap((first): Pair[] => {
    const after = mine.filter((each) => isNear(first, each));
    if (first.event === 'withdrawn') {
      const again = after.some(
        ({ event, about }) => event === 'raised' && topicOf(about) === topicOf(first.about),
      );
      return again ? [{ channel, what: 'wanted-again', about: first.about, explained: false }] : [];
    }
    if (first.event !== 'raised') return [];
    const takenBack = after.find(({ event, about }) => event === 'withdrawn' && about === first.about);
    const against = after.find(({ atMs }) => isUnwanted({ season, issued }, first.about, atMs)) ?? takenBack;
    if (!against) return [];
    const explained =
      takenBack !== undefined && takenBack.atMs <= against.atMs && endedOf(first.about) !== '';
    return [{ channel, what: 'no-longer-wanted', about: first.about, explained }];
  });
}

/** Whether an order that was asked for is not wanted by then, though neither made nor missed. */
function isUnwanted(
  { season, issued }: Pick<Diary, 'season' | 'issued'>,
  about: string,
  atMs: number,
): boolean {
  const [, enemy, orderBy] = /^order-by-(.+)-(\d{4}-\d\d-\d\d)@/.exec(about) ?? [];
  if (orderBy === undefined) return false;
  const { supplier, timeZone } = season.place;
  const latest = issued.filter(({ asOfMs }) => asOfMs <= atMs).at(-1);
  const isWanted =
    latest && wantedOf(latest.advice).some((each) => each.enemy === enemy && each.orderBy === orderBy);
  const isOrdered = season.orders.some(
    (order) =>
      order.enemy === enemy &&
      Math.abs(Date.parse(order.orderedAt) - atMs) <= pairDays * dayMs &&
      Date.parse(order.orderedAt) <= atMs,
  );
  return !isWanted && !isOrdered && atMs <= atLocalHour(orderBy, supplier!.cutoffHour, timeZone);
}

/** What a warning is about, whichever its day: `order-by-encarsia-formosa`. */
const topicOf = (about: string) => about.split('@')[0]!.replace(/-\d{4}-\d\d-\d\d$/, '');

function byRule({ left, warnings }: Told): Record<string, number> {
  const told: Record<string, number> = {};
  for (const { channel, event, about } of left) {
    if (channel !== 'push') continue;
    const rule = warnings.find(({ id }) => id === about.split('@')[0])?.rule ?? 'unknown';
    const words = event === 'withdrawn' ? `${rule}, no longer true` : rule;
    told[words] = (told[words] ?? 0) + 1;
  }
  return told;
}
