/** What was said a week before against what was counted: in words, as a table. */
import type { CountedAs, HeldRound } from '../../services/model/index.ts';
import { dayAndMonth, localDay } from '../words/dates.ts';
import { insectRange, insects } from '../words/numbers.ts';
import type { CountWeek } from './countWeeks.ts';
import type { FigureTable } from './palette.ts';

/** A round with the figure that every page tells of its day: all traps, or all leaves, together. */
export interface ToldRound extends HeldRound {
  told: number;
}

export interface HeldFigureData {
  timeZone: string;
  unit: CountedAs['unit'];
  limit: number;
  rounds: readonly ToldRound[];
}

const meanOf = (counts: readonly number[]): number =>
  counts.reduce((sum, count) => sum + count, 0) / Math.max(1, counts.length);

/** A round has one number a card or leaf check; `weeks` are the figures of the days. */
export function toldRounds(
  rounds: readonly HeldRound[],
  weeks: readonly CountWeek[],
  timeZone: string,
): ToldRound[] {
  const dayOf = (ms: number) => localDay(ms, timeZone);
  return rounds.map((round) => {
    const week = weeks.find(({ endMs }) => dayOf(endMs) === dayOf(Date.parse(round.time)));
    return { ...round, told: week?.middle ?? meanOf(round.counts) };
  });
}

export interface HowGood {
  /** Single counts that a range was given for, and how many lay in the one for 8 of 10. */
  counts: number;
  held: number;
  /** Rounds of a pest that can be compared with guessing "as last time", by whose middle was nearer. */
  rounds: number;
  nearer: number;
  asNear: number;
}

/** Nearness is judged on the logarithm, as counts grow by shares. */
export function howGood(rounds: readonly HeldRound[]): HowGood {
  const judged: HowGood = { counts: 0, held: 0, rounds: 0, nearer: 0, asNear: 0 };
  for (const { counts, said, last } of rounds) {
    if (!said) continue;
    judged.counts += counts.length;
    judged.held += counts.filter((n) => n >= said.count.q10 && n <= said.count.q90).length;
    if (last === undefined) continue;
    const off = (guess: number) => Math.abs(Math.log1p(guess) - Math.log1p(meanOf(counts)));
    const [ours, plain] = [off(Math.round(said.count.q50)), off(last)];
    judged.rounds += 1;
    if (ours < plain) judged.nearer += 1;
    if (ours === plain) judged.asNear += 1;
  }
  return judged;
}

/** Fewer say nothing about the forecasts. Judgement. */
const fewest = 5;

/** Told the same way when it is bad. */
export function howGoodWords({ counts, held, rounds, nearer, asNear }: HowGood): string {
  if (counts === 0)
    return 'No count has a forecast of a week before it yet: count two weeks running, then we can tell.';
  const inside = `Of ${counts} counts, each by itself, ${held} lay in the range for 8 of 10; about ${Math.round(0.8 * counts)} should.`;
  const even = asNear > 0 ? `, as near in ${asNear}` : '';
  const plain =
    rounds > 0
      ? ` Taking a round together, the middle was nearer than guessing "as last time" in ${nearer} of ${rounds} rounds${even}.`
      : '';
  const few = counts < fewest ? ' Too few yet to judge by.' : '';
  return `${inside}${plain}${few}`;
}

/** Rounds with more than the person's limit. */
export const roundsOver = (rounds: readonly ToldRound[], limit: number): number =>
  rounds.filter(({ told }) => told > limit).length;

export function heldAloud({ rounds, limit, unit }: HeldFigureData): string {
  if (rounds.length === 0) return 'Not counted this season yet.';
  const highest = Math.max(...rounds.map(({ told }) => told));
  const over = roundsOver(rounds, limit);
  const most = `At most ${insects(highest)} ${unit === 'trap-week' ? 'a trap' : 'of ten leaves'}.`;
  const weeks = `${over} of ${rounds.length} ${rounds.length === 1 ? 'round' : 'rounds'} over your limit.`;
  const { counts, held } = howGood(rounds);
  const good = counts > 0 ? ` ${held} of ${counts} counts lay in the range for 8 of 10.` : '';
  return `${most} ${weeks}${good}`;
}

export function heldTable({ rounds, timeZone }: HeldFigureData): FigureTable {
  const day = (time: string) => dayAndMonth(localDay(Date.parse(time), timeZone));
  return {
    head: ['Counted on', 'Counted', 'Said', 'Middle', 'Half', '8 of 10', '19 of 20'],
    rows: rounds.map(({ time, counts, said }) => {
      const c = said?.count;
      return [
        day(time),
        counts.map(insects).join(', '),
        said ? day(said.asOf) : 'nothing kept',
        c ? insects(c.q50) : '',
        c ? insectRange(c.q25, c.q75) : '',
        c ? insectRange(c.q10, c.q90) : '',
        c ? insectRange(c.q025, c.q975) : '',
      ];
    }),
  };
}
