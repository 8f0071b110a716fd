/** The figures of the counts on the canvas, each where there is room for it. */
import { type Box, figurePlaces } from './figurePlaces.ts';
import { type Mark, type Sheet, words } from './markStrokes.ts';
import { bold, plain } from './palette.ts';

/** Where the words of a glazing bar stand. */
function barWords({ context, area, y }: Sheet, mark: Mark & { kind: 'glazing-bar' }): Box {
  context.font = plain;
  const [left, middle] = [area.left + 4, Math.round(y(mark.y)) - 14];
  return { left, right: left + context.measureText(mark.text).width, top: middle - 8, bottom: middle + 8 };
}

/** The figures of the counts, before their discs are drawn over whatever lies beneath. */
export function drawFigures(sheet: Sheet, marks: readonly Mark[]): void {
  const { context, area } = sheet;
  const discs = marks.flatMap((mark) =>
    mark.kind === 'count' ? [{ ...mark, x: sheet.x(mark.x), y: sheet.y(mark.y) }] : [],
  );
  const taken = marks.flatMap((mark) => (mark.kind === 'glazing-bar' ? [barWords(sheet, mark)] : []));
  context.save();
  context.font = bold;
  const places = figurePlaces(discs, {
    taken,
    area,
    widthOf: (text) => context.measureText(text).width,
  });
  places.forEach((place, i) => {
    if (place) words(sheet, discs[i]!.text, place.x, place.y, 'center', bold);
  });
  context.restore();
}
