/** Boards send numbers as numbers, as text, or as one of the many words for a dead probe. */

const numeral = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const deadWords = /^(|[+-]?nan|[+-]?inf|[+-]?infinity|null|none|undefined|unavailable|unknown|n\/a|--?)$/i;

/** A finite number; `dead` when the value says that there is none; `odd` when it is something else. */
export function readNumber(value: unknown): number | 'dead' | 'odd' {
  if (value === undefined || value === null) return 'dead';
  if (typeof value === 'number') return Number.isFinite(value) ? value : 'dead';
  if (typeof value !== 'string') return 'odd';
  const text = value.trim();
  if (deadWords.test(text)) return 'dead';
  if (!numeral.test(text)) return 'odd';
  const number = Number(text);
  return Number.isFinite(number) ? number : 'dead';
}
