/** Under white wax: the mealybug and the ladybird larva that eats it. */
import { outline, oval, type Point, seeded, smooth } from './lines.ts';
import { Antenna, Body, ink, Leaf, Limb, Pair, Stroke } from './pen.tsx';

/** Places and directions around an oval. */
function around(count: number, [x, y]: Point, [rx, ry]: Point) {
  return Array.from({ length: count }, (_, i) => {
    const angle = ((i + 0.5) / count) * 2 * Math.PI;
    const [sin, cos] = [Math.sin(angle), -Math.cos(angle)];
    return { x: x + rx * sin, y: y + ry * cos, sin, cos, i };
  });
}

const Tooth = ({
  x,
  y,
  sin,
  cos,
  length,
}: {
  x: number;
  y: number;
  sin: number;
  cos: number;
  length: number;
}) => {
  const [nx, ny] = [-cos * 5, sin * 5];
  const d = `M${(x + nx).toFixed(1)} ${(y + ny).toFixed(1)}L${(x + sin * length).toFixed(1)} ${(y + cos * length).toFixed(1)}L${(x - nx).toFixed(1)} ${(y - ny).toFixed(1)}Z`;
  return <path d={d} fill="#fff" stroke={ink} stroke-width="1.1" stroke-linejoin="round" />;
};

export const Mealybug = () => (
  <g>
    <Leaf />
    <Pair>
      <Antenna bow="128 50, 140 38, 150 32" joints={6} width={1.8} />
    </Pair>
    {around(36, [120, 112], [31, 61]).map(({ x, y, sin, cos, i }) => (
      <Tooth key={i} x={x} y={y} sin={sin} cos={cos} length={i === 17 || i === 18 ? 19 : 15} />
    ))}
    <Body d={oval(120, 112, 32, 62)} tint="#f4dcd9" measured />
    <Pair>
      <Stroke
        d="M120 66 q14 5 22 0 M120 78 q16 5 26 -1 M120 90 q18 5 29 -1 M120 102 q19 5 31 -1 M120 114 q19 5 31 0 M120 126 q18 5 30 0 M120 138 q17 5 27 0 M120 150 q14 5 22 0 M120 161 q9 4 14 1"
        colour="#b98f8c"
        width={1.2}
      />
    </Pair>
    <Flour middle={[120, 112]} half={[29, 58]} dots={330} />
    <Stroke d="M120 62 V164" colour="#a58c92" width={4} />
  </g>
);

/** Floury wax: white grains with a grey rim. */
function Flour({ middle: [x, y], half: [rx, ry], dots }: { middle: Point; half: Point; dots: number }) {
  const random = seeded(3);
  const grains = Array.from({ length: dots }, () => {
    const [angle, r] = [random() * 2 * Math.PI, Math.sqrt(random())];
    return `M${(x + rx * r * Math.cos(angle)).toFixed(1)} ${(y + ry * r * Math.sin(angle)).toFixed(1)}h.01`;
  }).join('');
  return (
    <g>
      <Stroke d={grains} width={4.6} colour="#e6d3d0" />
      <Stroke d={grains} width={3.9} colour="#fff" />
    </g>
  );
}

/** Uneven curls; each bends its own way, the same on each drawing. */
function curls(): { x: number; y: number; d: string }[] {
  const random = seeded(9);
  return around(34, [120, 106], [26, 78]).map(({ x, y, sin, cos }) => {
    const length = 13 + random() * 20;
    const bend = (random() - 0.5) * 18;
    const [ex, ey] = [x + sin * length + bend * cos * 0.5, y + cos * length * 0.55 + Math.abs(bend) * 0.7];
    const d = `M${x.toFixed(1)} ${y.toFixed(1)}Q${(x + sin * length * 0.7 - bend * cos).toFixed(1)} ${(y + cos * length * 0.5 + bend * sin).toFixed(1)} ${ex.toFixed(1)} ${ey.toFixed(1)}`;
    return { x, y, d };
  });
}
const strands: readonly Point[] = [46, 64, 82, 100, 118, 136, 154, 172].map((y): Point => [120, y]);

export const MealybugLadybirdLarva = () => (
  <g>
    <Pair>
      <Limb joints="136 60, 172 46, 190 32" thick={3.4} tint="#d9c9b0" />
      <Limb joints="140 76, 184 74, 202 78" thick={3.4} tint="#d9c9b0" />
      <Limb joints="140 92, 178 110, 192 126" thick={3.4} tint="#d9c9b0" />
    </Pair>
    {curls().map(({ d }) => (
      <g key={d}>
        <Stroke d={d} width={9} />
        <Stroke d={d} width={6.4} colour="#fff" />
      </g>
    ))}
    <path
      d={outline('0 22, 20 34, 28 74, 30 118, 24 164, 10 196, 0 200')}
      fill="#fff"
      stroke={ink}
      stroke-width="1.4"
      data-measured=""
    />
    {strands.map(([x, y], i) => {
      const half = [18, 22, 25, 27, 27, 25, 22, 16][i] ?? 20;
      const d = smooth([
        [x - half, y + 6],
        [x - half * 0.5, y - 6],
        [x, y + 4],
        [x + half * 0.5, y - 6],
        [x + half, y + 6],
      ]);
      return (
        <g key={y}>
          <Stroke d={d} width={11} />
          <Stroke d={d} width={8.4} colour="#fff" />
        </g>
      );
    })}
    <Body d={outline('0 18, 8 20, 10 28, 6 34, 0 35')} tint="#d9b98a" width={1.5} />
  </g>
);
