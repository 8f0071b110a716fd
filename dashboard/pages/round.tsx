/** The round: one question a screen. Counting is blind: no forecast is shown before an entry is kept. */
import type { Trap, TrapCount } from '../../services/model/index.ts';
import type { Outcome, Recorded } from '../api.ts';
import { Shell } from '../parts/shell.tsx';
import { useStepFocus } from '../parts/stepFocus.ts';
import { placePath, resource } from '../state.ts';
import { countedOn, roundTime, screen, trapDraft } from './round/draft.ts';
import { Hanging } from './round/hanging.tsx';
import { KeptRound } from './round/kept.tsx';
import { ExactNumber, Kind } from './round/kind.tsx';
import { Leaves } from './round/leaves.tsx';
import { Part } from './round/part.tsx';
import { Start } from './round/start.tsx';
import { ThreeTicks } from './round/ticks.tsx';
import { TrapSummary } from './round/trap.tsx';

interface Known {
  traps: readonly Recorded<Trap>[];
  counts: readonly Recorded<TrapCount>[];
  outcome: Outcome | undefined;
}
function ScreenNow({ traps, counts, outcome }: Known) {
  const now = screen.value;
  const draft = trapDraft.value;
  useStepFocus(JSON.stringify({ ...now, typed: undefined }));
  if (now.at === 'leaves') return <Leaves outcome={outcome} />;
  if (now.at === 'ticks') return <ThreeTicks />;
  if (now.at === 'kept') return <KeptRound outcome={outcome} />;
  if (now.at === 'start' || !draft) return <Start traps={traps} counts={counts} />;
  if (now.at === 'hanging') return <Hanging draft={draft} counts={counts} day={countedOn.value} />;
  if (now.at === 'part') return <Part draft={draft} back={now.back} />;
  if (now.at === 'trap') return <TrapSummary draft={draft} outcome={outcome} />;
  const props = { draft, kind: now.kind };
  return now.exact ? <ExactNumber key={now.kind} {...props} typed={now.typed} /> : <Kind {...props} />;
}

export function Round() {
  const traps = resource<{ records: Recorded<Trap>[] }>(placePath('traps')).value.data?.records ?? [];
  const counts =
    resource<{ records: Recorded<TrapCount>[] }>(placePath('trap-counts')).value.data?.records ?? [];
  const outcome = resource<Outcome>(placePath('outcome')).value.data;
  const onMs = Date.parse(roundTime.value);
  const hanging = traps.filter(({ data }) => !data.takenDownAt || Date.parse(data.takenDownAt) > onMs);
  return (
    <Shell footBar={screen.value.at === 'start'}>
      <ScreenNow traps={hanging} counts={counts} outcome={outcome} />
    </Shell>
  );
}
