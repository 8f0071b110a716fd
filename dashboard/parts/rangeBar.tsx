/** A range of dates as nested thickness on a shared axis: line 19 of 20, thin 8 of 10, thick half. */
import type { DateRange } from '../../services/model/index.ts';

export interface DateAxis {
  fromMs: number;
  toMs: number;
}

interface RangeBarProps {
  range: DateRange;
  axis: DateAxis;
  /** Pests are filled, friends are open. */
  pest: boolean;
  todayMs: number;
}
export function RangeBar({ range, axis, pest, todayMs }: RangeBarProps) {
  const share = (ms: number) =>
    Math.max(0, Math.min(100, (100 * (ms - axis.fromMs)) / (axis.toMs - axis.fromMs)));
  const at = (key: keyof DateRange) => share(Date.parse(range[key]));
  const box = (low: keyof DateRange, high: keyof DateRange) => ({
    x: `${at(low)}%`,
    width: `${Math.max(0.4, at(high) - at(low))}%`,
  });
  return (
    <svg class={pest ? 'range-bar pest' : 'range-bar friend'} aria-hidden="true">
      <line class="range-today" x1={`${share(todayMs)}%`} x2={`${share(todayMs)}%`} y1="0" y2="26" />
      <line class="range-hair" x1={`${at('q025')}%`} x2={`${at('q975')}%`} y1="13" y2="13" />
      <rect class="range-thin" {...box('q10', 'q90')} y="10" height="6" />
      <rect class="range-thick" {...box('q25', 'q75')} y="6" height="14" />
      <line class="range-middle" x1={`${at('q50')}%`} x2={`${at('q50')}%`} y1="3" y2="23" />
    </svg>
  );
}
