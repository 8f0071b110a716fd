/** Warnings: raised once, kept while their reason lasts, ended when it is gone, saying why. */
import type { Store, Warning } from '../store/store.ts';
import { updateCalendar } from './channels/calendar.ts';
import { factsOf } from './facts.ts';
import { coldSpell } from './rules/coldSpell.ts';
import { countDue } from './rules/countDue.ts';
import { hotDelivery } from './rules/hotDelivery.ts';
import { lookAgain } from './rules/lookAgain.ts';
import { orderBy } from './rules/orderBy.ts';
import { peakExpected } from './rules/peakExpected.ts';
import { releaseWindow } from './rules/releaseWindow.ts';
import type { Matter, WarningFacts, WarningRule } from './rules/rule.ts';
import { sensorDoubted } from './rules/sensorDoubted.ts';
import { sensorSilent } from './rules/sensorSilent.ts';
import { waitingOver } from './rules/waitingOver.ts';
import { whileAway } from './rules/whileAway.ts';

export const warningRules: readonly WarningRule[] = [
  orderBy,
  releaseWindow,
  coldSpell,
  hotDelivery,
  whileAway,
  peakExpected,
  countDue,
  waitingOver,
  lookAgain,
  sensorSilent,
  sensorDoubted,
];

/**
 * Compares what the rules say now with the warnings kept: raises new ones, ends those whose reason is
 * gone, wakes those whose time of putting off is over, and keeps the calendar in step. Answers the open
 * ones, nearest first.
 */
export async function updateWarnings(store: Store, placeId: string, nowMs: number): Promise<Warning[]> {
  const facts = await factsOf(store, placeId, nowMs);
  if (facts === undefined) return [];
  const found = warningRules.flatMap((rule) => rule.matters(facts).map((matter) => ({ rule, matter })));
  for (const { rule, matter } of found) {
    if (matter.opensMs <= nowMs) raise(store, placeId, rule.id, matter, nowMs);
  }
  endOthers(store, placeId, new Set(found.map(({ matter }) => matter.id)), facts);
  updateCalendar(
    store,
    placeId,
    found.map(({ matter }) => matter),
    nowMs,
  );
  return store.warnings.list(placeId).filter(({ state }) => state === 'open');
}

function raise(store: Store, placeId: string, rule: string, matter: Matter, nowMs: number): void {
  const { id, deadlineMs, urgentFromMs, text, reason, ends } = matter;
  const said = { deadlineMs, text, reason, ends, ...(urgentFromMs !== undefined && { urgentFromMs }) };
  const known = store.warnings.get(placeId, id);
  if (known === undefined || known.state === 'done' || known.state === 'withdrawn') {
    store.warnings.save({ id, placeId, rule, ...said, raisedAtMs: nowMs, state: 'open' });
  } else if (known.state === 'put-off' && (known.putOffUntilMs ?? 0) <= nowMs) {
    store.warnings.save({ ...known, ...said, state: 'open' });
  } else if (known.state !== 'closed') {
    store.warnings.save({ ...known, ...said });
  }
}

/** A closed one ends too, silently, so that the same reason can be raised anew another time. */
function endOthers(store: Store, placeId: string, current: ReadonlySet<string>, facts: WarningFacts): void {
  for (const warning of store.warnings.list(placeId)) {
    const ended = warning.state === 'done' || warning.state === 'withdrawn';
    if (ended || current.has(warning.id)) continue;
    const rule = warningRules.find(({ id }) => id === warning.rule);
    const ending = rule?.ending(warning, facts) ?? { state: 'done', text: 'It is no longer looked after.' };
    const state = warning.state === 'closed' ? 'done' : ending.state;
    store.warnings.save({ ...warning, state, ended: ending.text });
  }
}
