/** How each mark is drawn on the canvas it is handed; shapes and words of the chart key. */
import { type Palette, plain } from './palette.ts';

export type Mark =
  | { kind: 'glazing-bar'; y: number; text: string }
  | { kind: 'border'; x: number; before: string; after: string }
  | { kind: 'count'; x: number; y: number; text: string; aside: boolean; part: boolean; zero: boolean }
  | { kind: 'band'; x: number; low: number; high: number }
  | { kind: 'gap'; x: number; roofed: boolean }
  | { kind: 'soil-label'; x: number; colour: string; text: string }
  | { kind: 'filled'; fromX: number; toX: number; low: number; high: number }
  /** `inside`: in the drawing, where words stand above it. */
  | { kind: 'off-scale'; x: number; text: string; inside?: boolean };

type Context = CanvasRenderingContext2D;
export interface Sheet {
  context: Context;
  palette: Palette;
  x: (value: number) => number;
  y: (value: number) => number;
  area: { left: number; right: number; top: number; bottom: number };
}

function line(context: Context, points: readonly (readonly [number, number])[], dash: number[] = []): void {
  context.setLineDash(dash);
  context.beginPath();
  points.forEach(([x, y], index) => {
    if (index === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  context.stroke();
  context.setLineDash([]);
}

/** Text on a patch of ground, so that no line runs through it. */
export function words(
  sheet: Sheet,
  text: string,
  x: number,
  y: number,
  align: CanvasTextAlign,
  font = plain,
): void {
  const { context, palette } = sheet;
  context.font = font;
  context.textAlign = align;
  context.textBaseline = 'middle';
  const width = context.measureText(text).width;
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  context.fillStyle = palette.glass;
  context.fillRect(left - 3, y - 9, width + 6, 18);
  context.fillStyle = palette.ink;
  context.fillText(text, x, y);
}

/** Keeps a centred text inside the drawing. */
function centred(sheet: Sheet, text: string, x: number): number {
  sheet.context.font = plain;
  const half = sheet.context.measureText(text).width / 2;
  return Math.max(sheet.area.left + half - 20, Math.min(sheet.area.right - half, x));
}

function glazingBar(sheet: Sheet, mark: Mark & { kind: 'glazing-bar' }): void {
  const { context, area } = sheet;
  const y = Math.round(sheet.y(mark.y)) + 0.5;
  context.lineWidth = 1;
  for (const level of [y - 2, y + 2])
    line(context, [
      [area.left, level],
      [area.right, level],
    ]);
  if (mark.text) words(sheet, mark.text, area.left + 4, y - 14, 'left');
}

function border(sheet: Sheet, mark: Mark & { kind: 'border' }): void {
  const { context, area } = sheet;
  const x = Math.round(sheet.x(mark.x)) + 0.5;
  context.lineWidth = 1.5;
  line(
    context,
    [
      [x, area.top - 22],
      [x, area.bottom],
    ],
    [2, 3],
  );
  words(sheet, mark.before, x - 6, area.top - 14, 'right');
  words(sheet, mark.after, x + 6, area.top - 14, 'left');
}

/** Filled disc = whole trap, half-filled = part of it, open ring = counted and 0. */
function count(sheet: Sheet, mark: Mark & { kind: 'count' }): void {
  const { context, palette } = sheet;
  const x = sheet.x(mark.x);
  const y = sheet.y(mark.y);
  const disc = (from: number, to: number) => {
    context.beginPath();
    context.arc(x, y, 5.5, from, to);
  };
  context.lineWidth = 2;
  context.fillStyle = palette.glass;
  disc(0, 2 * Math.PI);
  context.fill();
  context.fillStyle = palette.ink;
  if (!mark.zero) {
    disc(Math.PI / 2, mark.part ? 1.5 * Math.PI : 2.5 * Math.PI);
    context.fill();
  }
  disc(0, 2 * Math.PI);
  context.stroke();
}

function band(sheet: Sheet, mark: Mark & { kind: 'band' }): void {
  const x = sheet.x(mark.x);
  const [low, high] = [sheet.y(mark.low), Math.max(sheet.y(mark.high), sheet.area.top)];
  sheet.context.lineWidth = 1.5;
  line(sheet.context, [
    [x, low],
    [x, high],
  ]);
  for (const y of [low, high])
    line(sheet.context, [
      [x - 7, y],
      [x + 7, y],
    ]);
}

/** Two strokes through the axis = not counted; joined by a bar = down on purpose. */
function gap(sheet: Sheet, mark: Mark & { kind: 'gap' }): void {
  const x = Math.round(sheet.x(mark.x)) + 0.5;
  const { bottom } = sheet.area;
  sheet.context.lineWidth = 1.5;
  const top = bottom - (mark.roofed ? 14 : 6);
  for (const side of [-5, 5])
    line(sheet.context, [
      [x + side, top],
      [x + side, bottom + 6],
    ]);
  if (mark.roofed)
    line(sheet.context, [
      [x - 5, top],
      [x + 5, top],
    ]);
}

function soilLabel(sheet: Sheet, mark: Mark & { kind: 'soil-label' }): void {
  const { context, palette, area } = sheet;
  const x = sheet.x(mark.x);
  const bottom = area.bottom;
  context.beginPath();
  for (const [dx, dy] of [
    [-6, -24],
    [6, -24],
    [6, -7],
    [0, 4],
    [-6, -7],
  ] as const) {
    context.lineTo(x + dx, bottom + dy);
  }
  context.closePath();
  context.fillStyle = palette.label;
  context.fill();
  context.lineWidth = 2;
  context.strokeStyle = mark.colour;
  context.stroke();
  context.strokeStyle = palette.ink;
  context.lineWidth = 1;
  line(
    context,
    [
      [x, bottom + 6],
      [x, bottom + 32],
    ],
    [1, 3],
  );
  words(sheet, mark.text, centred(sheet, mark.text, x), bottom + 41, 'center');
}

/** A stretch filled in: ruled between two end strokes. */
function filled(sheet: Sheet, mark: Mark & { kind: 'filled' }): void {
  const { context, palette } = sheet;
  const [from, to] = [sheet.x(mark.fromX), sheet.x(mark.toX)];
  const [low, high] = [sheet.y(mark.low) + 6, sheet.y(mark.high) - 6];
  context.lineWidth = 1;
  context.strokeStyle = palette.rule;
  for (let y = high + 2; y < low; y += 4)
    line(context, [
      [from, y],
      [to, y],
    ]);
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.5;
  for (const x of [from, to])
    line(context, [
      [x, high],
      [x, low],
    ]);
}

function offScale(sheet: Sheet, mark: Mark & { kind: 'off-scale' }): void {
  const { context, area, palette } = sheet;
  const x = sheet.x(mark.x);
  const y = area.top + (mark.inside ? 8 : -14);
  context.beginPath();
  for (const [dx, dy] of [
    [-6, 5],
    [0, -6],
    [6, 5],
  ] as const) {
    context.lineTo(x + dx, y + dy);
  }
  context.closePath();
  context.fillStyle = palette.glass;
  context.fill();
  context.lineWidth = 1.5;
  context.stroke();
  if (mark.text === '') return;
  const right = !mark.inside && x + 60 < area.right;
  words(sheet, mark.text, x + (right ? 11 : -11), y, right ? 'left' : 'right');
}

export function draw(sheet: Sheet, mark: Mark): void {
  sheet.context.save();
  sheet.context.strokeStyle = sheet.palette.ink;
  if (mark.kind === 'glazing-bar') glazingBar(sheet, mark);
  else if (mark.kind === 'border') border(sheet, mark);
  else if (mark.kind === 'count') count(sheet, mark);
  else if (mark.kind === 'band') band(sheet, mark);
  else if (mark.kind === 'gap') gap(sheet, mark);
  else if (mark.kind === 'soil-label') soilLabel(sheet, mark);
  else if (mark.kind === 'filled') filled(sheet, mark);
  else offScale(sheet, mark);
  sheet.context.restore();
}
