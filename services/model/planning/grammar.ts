/** Names in sentences: one or many. */

/** Grammatical number of a name as growers say it: aphids are, whitefly is; the Latin ones stand for one kind. */
export const isPlural = (name: string): boolean => /^[a-z].*s$/.test(name);

const oneOf = (name: string): string => (isPlural(name) && name !== 'thrips' ? name.slice(0, -1) : name);

/** `1 aphid`, `3 aphids`, `3 whitefly`; whole insects, since nobody sees half of one. */
export function counted(number: number, name: string): string {
  const whole = Math.round(number);
  return `${whole} ${whole === 1 ? oneOf(name) : name}`;
}

/** The verb that a name takes: `hunts` for Encarsia, `hunt` for mites. */
export const verbFor = (name: string, one: string, many: string): string => (isPlural(name) ? many : one);

export const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
