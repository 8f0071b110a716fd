/** The colours a figure needs, read from the page by whoever draws it. */
export interface Palette {
  glass: string;
  label: string;
  ink: string;
  soft: string;
  bar: string;
  rule: string;
  card: string;
  p1: string;
  p2: string;
  e1: string;
  e2: string;
  e3: string;
}
export const paletteNames = [
  'glass',
  'label',
  'ink',
  'soft',
  'bar',
  'rule',
  'card',
  'p1',
  'p2',
  'e1',
  'e2',
  'e3',
] as const satisfies readonly (keyof Palette)[];

export const figureFont = { family: '"Atkinson Hyperlegible", system-ui, sans-serif', size: 14 } as const;
const canvasFont = (weight: 400 | 700) => `${weight} ${figureFont.size}px ${figureFont.family}`;
export const plain = canvasFont(400);
export const bold = canvasFont(700);

/** What every figure gives: the drawing, the sentence read aloud, the same numbers as a table. */
export interface FigureTable {
  head: string[];
  rows: string[][];
}
