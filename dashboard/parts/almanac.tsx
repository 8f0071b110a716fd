/** Almanac lines: a name, leader dots, a value, and a second line where it needs one. */
import type { ComponentChildren } from 'preact';
import { unbroken } from '../words/numbers.ts';

export const Almanac = ({ children }: { children: ComponentChildren }) => <ul class="almanac">{children}</ul>;

interface LineProps {
  name: string;
  value: string;
  note?: string | undefined;
  /** Something to press at the end of the line. */
  action?: ComponentChildren;
}
export function Line({ name, value, note, action }: LineProps) {
  return (
    <li class="almanac-line">
      <span class={value === '' ? 'almanac-row words-alone' : 'almanac-row'}>
        <span class="almanac-name">{unbroken(name)}</span>
        {value !== '' && <span class="leader" aria-hidden="true" />}
        {value !== '' && <strong class="almanac-value">{unbroken(value)}</strong>}
        {action}
      </span>
      {note && <span class="almanac-note">{unbroken(note)}</span>}
    </li>
  );
}
