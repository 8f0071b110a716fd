/** Where the figure of each count stands: clear of every disc, of other figures and of words in the drawing. */
export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}
export interface Disc {
  x: number;
  y: number;
  text: string;
  /** Something stands upright through the disc: left of it is better than above. */
  aside: boolean;
}
export interface FigurePlace {
  x: number;
  y: number;
}

const discPx = 6.5;
const heightPx = 15;
const gapPx = 16;

const around = ({ x, y }: FigurePlace, halfWidth: number, halfHeight: number): Box => ({
  left: x - halfWidth,
  right: x + halfWidth,
  top: y - halfHeight,
  bottom: y + halfHeight,
});

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** By disc, centred on the place; undefined where there is no room. The newest is placed first: it is looked for. */
export function figurePlaces(
  discs: readonly Disc[],
  { taken, area, widthOf }: { taken: readonly Box[]; area: Box; widthOf: (text: string) => number },
): (FigurePlace | undefined)[] {
  const placed: Box[] = [...taken];
  const found = [...discs].reverse().map((disc, index, all): FigurePlace | undefined => {
    if (disc.text === '') return undefined;
    const half = widthOf(disc.text) / 2 + 1;
    const left = { x: disc.x - half - discPx - 4, y: disc.y - 10 };
    const above = { x: disc.x, y: disc.y - gapPx };
    const below = { x: disc.x, y: disc.y + gapPx };
    const others = all.filter((_, i) => i !== index).map((other) => around(other, discPx, discPx));
    const isFree = (place: FigurePlace) => {
      const box = around(place, half, heightPx / 2);
      if (box.left < area.left || box.right > area.right || box.bottom > area.bottom) return false;
      return ![...placed, ...others].some((other) => meet(box, other));
    };
    const place = (disc.aside ? [left, above, below] : [above, left, below]).find(isFree);
    if (place) placed.push(around(place, half, heightPx / 2));
    return place;
  });
  return found.reverse();
}
