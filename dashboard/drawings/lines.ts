/** Geometry of the pictures: smooth outlines, bows, dots with a fixed seed. All in units of the box. */

export type Point = readonly [x: number, y: number];
/** Points as text, such as `126 26, 142 12`, or as numbers where they are worked out. */
export type Points = string | readonly Point[];

export const points = (given: Points): readonly Point[] =>
  typeof given === 'string'
    ? given.split(', ').map((pair): Point => {
        const [x, y] = pair.split(' ').map(Number);
        if (x === undefined || y === undefined) throw new Error(`not a point: ${pair}`);
        return [x, y];
      })
    : given;

const round = (value: number): number => Math.round(value * 10) / 10;

/** A smooth line through the points (Catmull-Rom as cubic curves). */
export function smooth(given: Points, closed = false): string {
  const through = points(given);
  const n = through.length;
  const at = (i: number): Point =>
    (closed ? through[(i + n) % n] : through[Math.min(n - 1, Math.max(0, i))]) as Point;
  let d = `M${at(0).map(round).join(' ')}`;
  for (let i = 0; i < (closed ? n : n - 1); i += 1) {
    const [p, a, b, q] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const pulls = [
      a[0] + (b[0] - p[0]) / 6,
      a[1] + (b[1] - p[1]) / 6,
      b[0] - (q[0] - a[0]) / 6,
      b[1] - (q[1] - a[1]) / 6,
    ];
    d += `C${[...pulls, ...b].map(round).join(' ')}`;
  }
  return closed ? `${d}Z` : d;
}

/** A closed outline that is the same on both sides of x = 120, from its half widths downwards. */
export function outline(given: Points): string {
  const halves = points(given);
  const right = halves.map(([half, y]): Point => [120 + half, y]);
  const left = halves
    .filter(([half]) => half > 0)
    .map(([half, y]): Point => [120 - half, y])
    .reverse();
  return smooth([...right, ...left], true);
}

export const oval = (x: number, y: number, rx: number, ry: number): string =>
  `M${round(x - rx)} ${round(y)}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;

/** The point at share `t` of a bow given by start, pull and end. */
export function along(bow: Points, t: number): Point {
  const [a, b, c] = points(bow) as [Point, Point, Point];
  const mix = (i: 0 | 1) => (1 - t) ** 2 * a[i] + 2 * t * (1 - t) * b[i] + t ** 2 * c[i];
  return [round(mix(0)), round(mix(1))];
}

/** Numbers in [0, 1) that are the same on each drawing (Park and Miller's generator). */
export function seeded(seed: number): () => number {
  let state = (seed * 7919 + 17) % 2147483647;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

interface Stippling {
  middle: Point;
  half: Point;
  dots: number;
  seed: number;
  shade: number;
}
/** Dots within an oval, denser to the lower right, as three path strings of growing dots. */
export function stippled({ middle: [x, y], half: [rx, ry], dots, seed, shade }: Stippling): string[] {
  const random = seeded(seed);
  const paths = ['', '', ''];
  for (let placed = 0, tries = 0; placed < dots && tries < 4000; tries += 1) {
    const [u, v, w] = [random() * 2 - 1, random() * 2 - 1, random()];
    if (u * u + v * v > 0.94 || w > 1 - shade + shade * ((u + 0.8 * v) / 1.3)) continue;
    paths[placed % 3] += `M${round(x + u * rx)} ${round(y + v * ry)}h.01`;
    placed += 1;
  }
  return paths.filter((d) => d !== '');
}

/** Short strokes standing on an oval, from `fromDeg` to `toDeg` clockwise with 0 at the top. */
export function fringe(
  [x, y]: Point,
  [rx, ry]: Point,
  {
    count,
    length,
    fromDeg = 0,
    toDeg = 360,
  }: { count: number; length: number; fromDeg?: number; toDeg?: number },
): string {
  const strokes = Array.from({ length: count }, (_, i) => {
    const angle = ((fromDeg + ((toDeg - fromDeg) * (i + 0.5)) / count) * Math.PI) / 180;
    const [sin, cos] = [Math.sin(angle), -Math.cos(angle)];
    const reach = length * (i % 2 === 0 ? 1 : 0.78);
    return `M${round(x + rx * sin)} ${round(y + ry * cos)}l${round(reach * sin)} ${round(reach * cos)}`;
  });
  return strokes.join('');
}
