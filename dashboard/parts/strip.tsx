/** One strip on top, one state at a time, worst first; the whole strip is the target. */
import { working } from '../live.ts';
import { type Notice, notice } from '../notices.ts';
import { outbox } from '../offline/outbox.ts';
import { go } from '../router.ts';
import { health, offline, refresh, zone } from '../state.ts';
import { localClock } from '../words/dates.ts';
import { unbroken } from '../words/numbers.ts';

const worstFirst: readonly Notice['kind'][] = [
  'refused',
  'fault',
  // What was just entered or taken back says by itself that it lies on the phone.
  'undone',
  'kept',
  'offline',
  'working',
  'loading',
];

function offlineNotice(): Notice | undefined {
  if (!offline.value) return undefined;
  const waiting = outbox.value.length;
  if (waiting > 0) {
    const entries = waiting === 1 ? '1 entry' : `${waiting} entries`;
    const join = waiting === 1 ? 'it joins up by itself' : 'they join up by themselves';
    return {
      kind: 'offline',
      lead: 'No signal.',
      text: `${entries} kept on this phone, ${join}.`,
      action: show,
    };
  }
  const since = health.value.data?.now;
  const lead = since ? `From ${localClock(Date.parse(since), zone.value)}.` : 'No answer.';
  const action = { label: 'try now', run: () => refresh(/./) };
  return { kind: 'offline', lead, text: 'The house has not answered since.', action };
}

const show = { label: 'show', run: () => go('/phone') };

/** With signal, entries wait only when the house would not take them, or not yet. */
function waitingNotice(): Notice | undefined {
  const refused = outbox.value.filter((entry) => entry.refused).length;
  const waiting = outbox.value.length - refused;
  if (refused > 0) {
    const entries = refused === 1 ? '1 entry was' : `${refused} entries were`;
    return {
      kind: 'refused',
      lead: 'Not taken:',
      text: `${entries} refused. Kept on this phone.`,
      action: show,
    };
  }
  if (waiting === 0 || offline.value) return undefined;
  const entries = waiting === 1 ? '1 entry waits' : `${waiting} entries wait`;
  return { kind: 'offline', lead: 'Not sent yet:', text: `${entries} on this phone.`, action: show };
}

function faultNotice(): Notice | undefined {
  const state = health.value.data;
  if (state?.status !== 'unwell') return undefined;
  const text = `${state.reasons.join(' ')} The last sentence still stands.`;
  return { kind: 'fault', lead: 'Not everything runs.', text };
}

const workingNotice = (): Notice | undefined =>
  working.value
    ? { kind: 'working', lead: 'Working it out again', text: 'with your new entry. A few seconds.' }
    : undefined;

export function Strip() {
  const all = [notice.value, waitingNotice(), faultNotice(), offlineNotice(), workingNotice()].filter(
    (each) => each !== undefined,
  );
  const worst = all.sort((a, b) => worstFirst.indexOf(a.kind) - worstFirst.indexOf(b.kind))[0];
  const grave = worst?.kind === 'refused' || worst?.kind === 'fault';
  /** An entry is told with its undo, and that the sentence does not know it yet. */
  const meanwhile = working.value && (worst?.kind === 'kept' || worst?.kind === 'undone');
  const words = worst && (
    <span>
      <strong>{worst.lead}</strong> {unbroken(worst.text)}
      {meanwhile && ' Working it out again.'}
    </span>
  );
  return (
    <div class="strip-place" role={grave ? 'alert' : 'status'}>
      {worst?.action && (
        <button type="button" class="strip" onClick={worst.action.run}>
          {words}
          <span class="strip-action">{worst.action.label}</span>
        </button>
      )}
      {worst && !worst.action && <div class="strip">{words}</div>}
    </div>
  );
}
