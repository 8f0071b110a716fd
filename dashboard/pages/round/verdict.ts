/** Counts against what was forecast for them, a sentence for each pest that has one. */
import type { Forecast, LeafKind, Quantiles, Trap, TrapCount } from '../../../services/model/index.ts';
import { capital, pestNames, trapCatch } from '../../words/names.ts';
import { insectRange } from '../../words/numbers.ts';

/** The middle 8 of 10 in words, and how the count stands to them. */
function againstExpected(counted: number, { q025, q10, q90, q975 }: Quantiles): string {
  const range = insectRange(q10, q90);
  if (counted > q975) return `far more than the ${range} we expected. Is it right? Undo it if not.`;
  if (counted < q025) return `far fewer than the ${range} we expected. Is it right? Undo it if not.`;
  if (counted > q90) return `we expected ${range}: more than we thought.`;
  if (counted < q10) return `we expected ${range}: fewer than we thought.`;
  return `we expected ${range}.`;
}

type Against = Pick<Forecast, 'pests'>;
interface CountedTrap extends Pick<TrapCount, 'card' | 'countedFraction' | 'counts'> {
  trap: Trap;
  /** As typed. */
  exposureDays: string;
}
interface LeavesSeen {
  leaves: number;
  infested: Partial<Record<LeafKind, number>>;
}

/** Silent unless the count is like what is forecast: a whole new trap, hung for about a week. */
export function trapVerdict(draft: CountedTrap, { pests }: Against): string {
  const days = Number(draft.exposureDays);
  const alike = draft.card === 'new' && draft.countedFraction === 1 && days >= 6 && days <= 8;
  if (!alike) return '';
  const sentences = pests.flatMap(({ counted: as, weeks }) => {
    const counted = as.unit === 'trap-week' ? draft.counts[as.kind] : undefined;
    const week = weeks[0];
    if (as.unit !== 'trap-week' || typeof counted !== 'number' || !week) return [];
    return [`${trapCatch(counted, as.kind)} on ${draft.trap.name}; ${againstExpected(counted, week.count)}`];
  });
  return sentences.join(' ');
}

/** Of pests that never come to traps; silent unless ten leaves were looked under. */
export function leafVerdict({ leaves, infested }: LeavesSeen, { pests }: Against): string {
  if (leaves !== 10) return '';
  const sentences = pests.flatMap(({ pest, counted, weeks }) => {
    const found = counted.unit === 'ten-leaves' ? infested[counted.kind] : undefined;
    const week = weeks[0];
    if (found === undefined || !week) return [];
    return [`${capital(pestNames[pest])} on ${found} of ten leaves; ${againstExpected(found, week.count)}`];
  });
  return sentences.join(' ');
}
