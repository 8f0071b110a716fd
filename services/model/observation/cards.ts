/** Sticky cards, which take what they catch. */
import type { Season, TrapCount } from '../season.ts';
import { dayMs } from '../units.ts';

/** A card found down hangs again at the next round, or after so long: what a release of wasps asks for. Common practice, no source. */
const downMs = 7 * dayMs;

/**
 * How many hang on each day from `startMs` on; those not taken down hang on. A card that was down at a round hung neither
 * before it nor until the next.
 */
export function cardsHanging(
  { traps, trapCounts }: Pick<Season, 'traps' | 'trapCounts'>,
  startMs: number,
  days: number,
): Float64Array {
  const hanging = new Float64Array(days);
  for (const { id, hungAt, takenDownAt } of traps) {
    const hung = { fromMs: Date.parse(hungAt), toMs: takenDownAt ? Date.parse(takenDownAt) : Infinity };
    const gaps = spansDown(trapCounts.filter(({ trapId }) => trapId === id));
    for (let day = 0; day < days; day++) {
      const atMs = startMs + day * dayMs;
      const down = gaps.reduce((sum, gap) => sum + shareOf(gap, atMs), 0);
      hanging[day] = hanging[day]! + Math.max(0, shareOf(hung, atMs) - down);
    }
  }
  return hanging;
}

interface Span {
  fromMs: number;
  toMs: number;
}

/** Share of the day from `atMs` on. */
const shareOf = ({ fromMs, toMs }: Span, atMs: number): number =>
  Math.max(0, Math.min(toMs, atMs + dayMs) - Math.max(fromMs, atMs)) / dayMs;

/** Of the rounds of one trap: from the round before one that found it down to the next that found it hanging. */
function spansDown(counts: readonly TrapCount[]): Span[] {
  const rounds = counts
    .map(({ time, exposureDays, card }) => ({
      isDown: card === 'down',
      fromMs: Date.parse(time) - exposureDays * dayMs,
      toMs: Date.parse(time),
    }))
    .sort((a, b) => a.toMs - b.toMs);
  return rounds.flatMap(({ isDown, fromMs, toMs }, i) => {
    if (!isDown) return [];
    const since = Math.max(fromMs, rounds[i - 1]?.toMs ?? fromMs);
    return [{ fromMs: since, toMs: Math.max(toMs, rounds[i + 1]?.fromMs ?? toMs + downMs) }];
  });
}
