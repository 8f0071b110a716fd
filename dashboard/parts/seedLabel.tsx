/** A seed label: a tag with rounded shoulders and one point; the next date wears the yellow. */
import type { ComponentChildren } from 'preact';

export const labelShapes = {
  right: 'M6 1H72L99 50L72 99H6Q1 99 1 92V8Q1 1 6 1Z',
  down: 'M7 1H93Q99 1 99 8V78L50 99L1 78V8Q1 1 7 1Z',
} as const;

export function LabelShape({ point }: { point: keyof typeof labelShapes }) {
  return (
    <svg class="label-shape" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      <path d={labelShapes[point]} vector-effect="non-scaling-stroke" />
    </svg>
  );
}

interface SeedLabelProps {
  above: string;
  date: string;
  next?: boolean;
  children: ComponentChildren;
}
export function SeedLabel({ above, date, next = false, children }: SeedLabelProps) {
  return (
    <li class="seed-row">
      <span class={next ? 'seed-label next' : 'seed-label'}>
        <LabelShape point="right" />
        <span class="seed-above">{above}</span>
        <span class="seed-date">{date}</span>
      </span>
      <span class="seed-text">{children}</span>
    </li>
  );
}
