/**
 * One hand for all pictures: a box of 240 x 240, seen from above, head up, light from the upper left.
 * Outline 1.8 with a second one behind it on the shadow side, legs tapering with a dot at each joint,
 * hairs 0.9, one flat tint an animal.
 */
import type { ComponentChildren } from 'preact';
import { along, type Point, type Points, points, stippled } from './lines.ts';

export const ink = '#15212b';
export const paper = '#ffffff';
const vein = '#a9bdb0';

interface BodyProps {
  d: string;
  tint?: string;
  /** The part whose length the size bar tells; checked against published sizes. */
  measured?: boolean;
  width?: number;
}
export const Body = ({ d, tint = paper, measured = false, width = 1.8 }: BodyProps) => (
  <g>
    <path d={d} fill={ink} stroke="none" transform="translate(1.5 1.7)" />
    <path
      d={d}
      fill={tint}
      stroke={ink}
      stroke-width={width}
      stroke-linejoin="round"
      {...(measured && { 'data-measured': '' })}
    />
  </g>
);

interface StrokeProps {
  d: string;
  width?: number;
  colour?: string;
  dash?: string;
}
export const Stroke = ({ d, width = 1.1, colour = ink, dash }: StrokeProps) => (
  <path
    d={d}
    fill="none"
    stroke={colour}
    stroke-width={width}
    stroke-linecap="round"
    stroke-linejoin="round"
    stroke-dasharray={dash}
  />
);

/** Everything inside once more on the other side of the middle line. */
export const Pair = ({ children }: { children: ComponentChildren }) => (
  <g>
    {children}
    <g transform="translate(240 0) scale(-1 1)">{children}</g>
  </g>
);

interface LimbProps {
  joints: Points;
  /** Thickness at the body; half of it at the tip. */
  thick?: number;
  /** Without a tint the limb is a plain line of ink. */
  tint?: string;
}
/** A leg from body to claw. */
export function Limb({ joints: given, thick = 4, tint }: LimbProps) {
  const joints = points(given);
  const parts = joints.slice(1).map((to, i) => {
    const [from] = joints.slice(i, i + 1) as [Point];
    const width = thick * (1 - (0.55 * i) / Math.max(1, joints.length - 2));
    return { d: `M${from.join(' ')} L${to.join(' ')}`, width };
  });
  return (
    <g>
      {parts.map(({ d, width }) => (
        <Stroke key={d} d={d} width={tint ? width + 2.4 : width} />
      ))}
      {tint && parts.map(({ d, width }) => <Stroke key={d} d={d} width={width} colour={tint} />)}
      {joints.slice(1, -1).map((joint) => (
        <Dot key={joint.join(' ')} at={joint} r={tint ? thick * 0.32 : thick * 0.62} />
      ))}
    </g>
  );
}

export const Dot = ({ at: [x, y], r = 2, colour = ink }: { at: Point; r?: number; colour?: string }) => (
  <circle cx={x} cy={y} r={r} fill={colour} />
);

interface AntennaProps {
  /** Start, pull, end of its bow. */
  bow: Points;
  joints: number;
  width?: number;
  /** Beads instead of plain joints. */
  bead?: number;
}
export function Antenna({ bow, joints, width = 1.3, bead }: AntennaProps) {
  const [a, b, c] = points(bow) as [Point, Point, Point];
  const beads = Array.from({ length: joints }, (_, i) => along(bow, (i + 1) / joints));
  return (
    <g>
      <Stroke d={`M${a.join(' ')} Q${b.join(' ')} ${c.join(' ')}`} width={width} />
      {beads.slice(0, bead ? undefined : -1).map((at) => (
        <Dot key={at.join(' ')} at={at} r={bead ?? width * 0.95} />
      ))}
    </g>
  );
}

interface StippleProps {
  middle: Point;
  half: Point;
  dots?: number;
  seed?: number;
  colour?: string;
  /** 0: all over; 1: only on the shadow side. */
  shade?: number;
}
export function Stipple({ middle, half, dots = 60, seed = 1, colour = ink, shade = 1 }: StippleProps) {
  return (
    <g>
      {stippled({ middle, half, dots, seed, shade }).map((d, i) => (
        <Stroke key={d} d={d} width={1.1 + 0.5 * i} colour={colour} />
      ))}
    </g>
  );
}

/** Pale veins of a leaf behind what lies flat on it. */
export const Leaf = () => (
  <g>
    <Stroke colour={vein} d="M14 8 C46 58 52 150 18 214" width={1.2} />
    <Stroke colour={vein} d="M222 6 C196 60 200 150 228 214" width={1.2} />
    <Stroke
      colour={vein}
      d="M42 96 C24 90 12 92 2 98 M206 70 C220 62 232 62 238 64 M204 150 C218 148 230 152 238 158"
    />
  </g>
);

/** The lines printed on a yellow trap. */
export const Trap = () => (
  <g>
    <path d="M4 4 H236 V216 H4 Z" fill="#fdf3c2" />
    <Stroke colour="#d9b93a" width={1} d="M60 4 V216 M180 4 V216 M4 60 H236 M4 166 H236" />
  </g>
);

/** A length in millimetres, ends ticked; its words stand below the picture. */
export function SizeBar({ mm, unitsPerMm }: { mm: number; unitsPerMm: number }) {
  const half = (mm * unitsPerMm) / 2;
  return (
    <path
      d={`M${120 - half} 223 v10 M${120 - half} 228 H${120 + half} M${120 + half} 223 v10`}
      fill="none"
      stroke={ink}
      stroke-width={1.8}
      data-bar={mm}
    />
  );
}
