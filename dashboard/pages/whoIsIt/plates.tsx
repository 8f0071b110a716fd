/** What is left, side by side with the test that decides, friends beside pests. */
import { type KeyKind, lookFor } from '../../../services/model/index.ts';
import { Picture } from '../../drawings/picture.tsx';
import { altOf, back, choose, sides } from './answers.ts';

export const Badge = ({ side }: { side: KeyKind['side'] }) => (
  <span class={`side-badge ${side}`}>{sides[side]}</span>
);

const numbers = ['none', 'one', 'two', 'three', 'four'];

function sentence(left: readonly KeyKind[]): string {
  const [first] = left;
  if (left.length === 1 && first) return `Probably: ${first.name}.`;
  if (left.length <= 4) return `One of these ${numbers[left.length]}. Which test fits?`;
  return `${left.length} are left. Which test fits?`;
}

function Plate({ kind }: { kind: KeyKind }) {
  return (
    <article class="plate" aria-label={kind.name}>
      <div class="plate-head">
        <Picture id={kind.id} alt={altOf(kind)} />
        <div class="plate-words">
          <Badge side={kind.side} />
          <h2>{kind.name}</h2>
          <p>{kind.look}</p>
        </div>
      </div>
      <p class="plate-test">
        <strong>Test:</strong> {kind.test}
      </p>
      <button
        type="button"
        class="key wide-key"
        aria-label={`It is this one: ${kind.name}`}
        onClick={() => choose(kind)}
      >
        It is this one
      </button>
    </article>
  );
}

export function Plates({ left }: { left: readonly KeyKind[] }) {
  const decisive = lookFor(left);
  return (
    <>
      <h1 tabIndex={-1}>{sentence(left)}</h1>
      {decisive && (
        <p class="decisive">
          <strong>Look for:</strong> {decisive}
        </p>
      )}
      {left.length > 4 && (
        <p class="note">Fewer are left when one more question is answered: go back, or choose.</p>
      )}
      <div class="plates">
        {left.map((kind) => (
          <Plate key={kind.id} kind={kind} />
        ))}
      </div>
      <div class="thumb-bar">
        <button type="button" class="text-button" onClick={back}>
          Back
        </button>
        <button type="button" class="key not-sure" onClick={() => choose('none')}>
          None of these, or not sure
        </button>
      </div>
    </>
  );
}
