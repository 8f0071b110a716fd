/** Under the leaves: how many were looked at, and per kind none or seen. Untouched = not looked for. */
import type { LeafKind } from '../../../services/model/index.ts';
import type { Outcome } from '../../api.ts';
import { Field, issueFor, Key, RefusedWords } from '../../parts/field.tsx';
import { Stepper } from '../../parts/stepper.tsx';
import { leafKindWords } from '../../words/names.ts';
import { leafDraft, refusedEntry, roundTime, show } from './draft.ts';
import { Frame } from './frame.tsx';
import { keepLeaves } from './keep.ts';

const leafKinds = Object.keys(leafKindWords) as LeafKind[];

function setInfested(kind: LeafKind, leaves: number | undefined): void {
  const infested = { ...leafDraft.value.infested };
  if (leaves === undefined) delete infested[kind];
  else infested[kind] = leaves;
  leafDraft.value = { ...leafDraft.value, infested };
}

function LeafRow({ kind }: { kind: LeafKind }) {
  const { leaves, infested, totals } = leafDraft.value;
  const { name, look } = leafKindWords[kind];
  const found = infested[kind];
  return (
    <li class="leaf-row">
      <div class="leaf-keys">
        <span>
          <strong>{name}</strong>
          <span class="note">{look}</span>
        </span>
        <Key
          pressed={found === 0}
          label={`${name}: none`}
          onPress={() => setInfested(kind, found === 0 ? undefined : 0)}
        >
          none
        </Key>
        <Key
          pressed={(found ?? 0) > 0}
          label={`${name}: seen`}
          onPress={() => setInfested(kind, (found ?? 0) > 0 ? undefined : 1)}
        >
          seen
        </Key>
      </div>
      {found !== undefined && found > 0 && (
        <div class="leaf-numbers">
          <Stepper
            label={`leaves with ${name.toLowerCase()}`}
            value={found}
            low={1}
            high={leaves}
            onChange={(n) => setInfested(kind, n)}
          />
          <Field
            label="How many in all, if counted"
            value={totals[kind] ?? ''}
            inputMode="numeric"
            issue={issueFor(refusedEntry.value, `totals.${kind}`)}
            onText={(text) => {
              leafDraft.value = { ...leafDraft.value, totals: { ...totals, [kind]: text } };
            }}
          />
        </div>
      )}
    </li>
  );
}

export function Leaves({ outcome }: { outcome: Outcome | undefined }) {
  const { leaves, infested } = leafDraft.value;
  const looked = Object.keys(infested).length;
  return (
    <Frame
      title="Under the leaves"
      thumb={
        <>
          <button type="button" class="text-button" onClick={() => show({ at: 'start' })}>
            Back
          </button>
          <button
            type="button"
            class="main-button"
            disabled={looked === 0}
            onClick={() => void keepLeaves(leafDraft.value, roundTime.value, outcome)}
          >
            {looked === 0 ? 'Answer one kind' : leaves === 1 ? 'Keep 1 leaf' : `Keep ${leaves} leaves`}
          </button>
        </>
      }
    >
      <RefusedWords refused={refusedEntry.value} />
      <p>Five plants: one young top leaf and one old low leaf each, underside, with the lens.</p>
      <Stepper
        label="leaves looked at"
        value={leaves}
        low={1}
        high={200}
        onChange={(n) => {
          leafDraft.value = { ...leafDraft.value, leaves: n };
        }}
      />
      {issueFor(refusedEntry.value, 'leaves') && <p class="field-issue">Look at the number of leaves.</p>}
      <p class="note">
        What you do not touch counts as not looked for. Black scales hatch: leave them on the plant.
      </p>
      <ul class="leaf-rows">
        {leafKinds.map((kind) => (
          <LeafRow key={kind} kind={kind} />
        ))}
      </ul>
    </Frame>
  );
}
