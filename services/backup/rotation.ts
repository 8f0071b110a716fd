/** Which copies are kept: many of late, few of old. */

export interface Keeping {
  days: number;
  weeks: number;
  months: number;
}
export const usualKeeping: Keeping = { days: 7, weeks: 5, months: 12 };

const pattern = /^glasstide-(\d{4}-\d{2}-\d{2})\.sqlite$/;

export const copyName = (day: string): string => `glasstide-${day}.sqlite`;
export const dayOfCopy = (name: string): string | undefined => pattern.exec(name)?.[1];

/**
 * The copies that may go: all but the last `days`, and the last of each of the last `weeks` and `months` that
 * have one. Counted are days on which a copy was made, so a machine that was off for long loses nothing.
 */
export function surplusCopies(names: readonly string[], keeping: Keeping = usualKeeping): string[] {
  const newestFirst = names
    .filter((name) => dayOfCopy(name) !== undefined)
    .sort()
    .reverse();
  const kept = new Set([
    ...newestFirst.slice(0, keeping.days),
    ...lastOfEach(newestFirst, mondayOf).slice(0, keeping.weeks),
    ...lastOfEach(newestFirst, (day) => day.slice(0, 7)).slice(0, keeping.months),
  ]);
  return newestFirst.filter((name) => !kept.has(name));
}

function lastOfEach(newestFirst: readonly string[], groupOf: (day: string) => string): string[] {
  const seen = new Map<string, string>();
  for (const name of newestFirst) {
    const group = groupOf(dayOfCopy(name)!);
    if (!seen.has(group)) seen.set(group, name);
  }
  return [...seen.values()];
}

const dayMs = 86_400_000;

/** 1 January 1970 was a Thursday. */
function mondayOf(day: string): string {
  const days = Date.parse(day) / dayMs;
  return String(Math.floor((days + 3) / 7));
}
