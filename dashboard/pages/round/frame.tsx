/** The frame of every screen of the round: head with the way out, progress, thumb bar. */
import type { ComponentChildren } from 'preact';
import { show } from './draft.ts';

interface FrameProps {
  title: string;
  /** Steps done of all. */
  done?: number;
  of?: number;
  children: ComponentChildren;
  thumb: ComponentChildren;
}
export function Frame({ title, done = 0, of = 0, children, thumb }: FrameProps) {
  return (
    <div class="round">
      <div class="round-head">
        <h1 tabIndex={-1}>{title}</h1>
        <a class="text-button" href="/" onClick={() => show({ at: 'start' })}>
          Stop, keep what is entered
        </a>
      </div>
      {of > 0 && (
        <div class="round-progress" role="img" aria-label={`Step ${done + 1} of ${of}`}>
          {Array.from({ length: of }, (_, step) => (
            <span key={step} class={step < done ? 'done' : undefined} />
          ))}
        </div>
      )}
      <div class="round-body">{children}</div>
      <div class="thumb-bar">{thumb}</div>
    </div>
  );
}
