/** How much of the trap was counted; holds for all kinds of this trap. */
import { changeTrap, type Screen, show, type TrapDraft } from './draft.ts';
import { Frame } from './frame.tsx';

const parts: readonly { fraction: number; name: string; note: string }[] = [
  { fraction: 1, name: 'the whole trap', note: 'both faces' },
  { fraction: 0.5, name: 'half', note: 'one face, or half of both' },
  { fraction: 0.2, name: 'one column', note: 'about a fifth, on both faces' },
];

export const partName = (fraction: number): string =>
  parts.find((each) => each.fraction === fraction)?.name ?? `${Math.round(fraction * 100)} % of the trap`;

/** ` on half`, as it follows a number; nothing for the whole trap. */
export const onPart = (fraction: number): string => (fraction < 1 ? ` on ${partName(fraction)}` : '');

export function Part({ draft, back }: { draft: TrapDraft; back: Screen }) {
  const choose = (countedFraction: number) => {
    changeTrap({ countedFraction });
    show(back);
  };
  return (
    <Frame
      title={draft.trap.name}
      thumb={
        <button type="button" class="text-button" onClick={() => show(back)}>
          Back
        </button>
      }
    >
      <h2 class="round-question">How much of it do you count?</h2>
      <div class="tall-keys">
        {parts.map(({ fraction, name, note }) => (
          <button
            type="button"
            class="tall-key part-key"
            key={fraction}
            aria-pressed={draft.countedFraction === fraction}
            onClick={() => choose(fraction)}
          >
            <span class="part-picture" aria-hidden="true">
              <span style={{ width: `${fraction * 100}%` }} />
            </span>
            <strong>{name}</strong>
            <span>{note}</span>
          </button>
        ))}
      </div>
      <p class="note">For every kind on this trap.</p>
    </Frame>
  );
}
