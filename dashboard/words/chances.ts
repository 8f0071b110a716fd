/** Chances in fixed words, counts and panes: the same word always for the same chance (docs: voice). */
export type Chance = number;

/** Upper bounds are exclusive up to `probably`; 0.9 itself is still `probably`, 0.97 `very probably`. */
export function chanceWord(chance: Chance): string {
  if (chance < 0.03) return 'hardly ever';
  if (chance < 0.1) return 'very unlikely';
  if (chance < 0.35) return 'unlikely';
  if (chance < 0.65) return 'may or may not';
  if (chance <= 0.9) return 'probably';
  if (chance <= 0.97) return 'very probably';
  return 'almost surely';
}

/** How many of ten, kept inside the band of its word so that word and count never disagree. */
function ofTen(chance: Chance): number {
  const rounded = Math.round(chance * 10);
  if (chance < 0.35) return Math.min(3, Math.max(1, rounded));
  if (chance < 0.65) return Math.min(6, Math.max(4, rounded));
  return Math.min(9, Math.max(7, rounded));
}

export function chanceCounts(chance: Chance): string {
  if (chance < 0.03) return 'fewer than 1 of 30';
  if (chance < 0.1) return 'fewer than 1 of 10';
  if (chance <= 0.9) return `${ofTen(chance)} of 10`;
  return chance <= 0.97 ? 'more than 9 of 10' : 'more than 29 of 30';
}

/** Shaded panes of the roof of ten, in halves. */
export function shadedPanes(chance: Chance): number {
  if (chance < 0.03) return 0;
  if (chance < 0.1) return 0.5;
  if (chance <= 0.9) return ofTen(chance);
  return chance <= 0.97 ? 9.5 : 10;
}

/** The number of panes as it stands in a sentence. */
export function paneNumber(chance: Chance): string {
  const panes = shadedPanes(chance);
  if (panes === 0.5) return 'half a pane';
  return panes === 9.5 ? 'more than 9' : panes === 0 ? 'none' : String(panes);
}

/** `8 panes of 10 shaded`, `Half a pane of 10 shaded`. */
export function paneWords(chance: Chance): string {
  const panes = shadedPanes(chance);
  if (panes === 0) return 'No pane of 10 shaded';
  if (panes === 0.5) return 'Half a pane of 10 shaded';
  if (panes === 1) return '1 pane of 10 shaded';
  return `${panes === 9.5 ? 'More than 9' : panes} panes of 10 shaded`;
}
