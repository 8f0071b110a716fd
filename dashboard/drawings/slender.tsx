/** Slender ones: thrips, their young, springtails. */
import { outline, type Point, smooth } from './lines.ts';
import { Antenna, Body, Dot, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const straw = '#e8cf8a';

/** Long hairs on both edges of a stick, from root to tip. */
function feathered([x1, y1]: Point, [x2, y2]: Point, hairs: number, length: number): string {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const size = Math.hypot(dx, dy);
  const [nx, ny] = [-dy / size, dx / size];
  return Array.from({ length: hairs }, (_, i) => {
    const t = 0.16 + (0.84 * i) / (hairs - 1);
    const reach = length * (0.7 + 0.3 * Math.sin(t * Math.PI));
    const [x, y] = [x1 + t * dx, y1 + t * dy];
    const [back, out] = [0.45 * reach, 0.9 * reach];
    return [1, -0.55]
      .map((side) => {
        const [tx, ty] = [x + side * nx * out + (dx / size) * back, y + side * ny * out + (dy / size) * back];
        return `M${x.toFixed(1)} ${y.toFixed(1)}L${tx.toFixed(1)} ${ty.toFixed(1)}`;
      })
      .join('');
  }).join('');
}

const Stick = ({ from, to, wide }: { from: Point; to: Point; wide: number }) => (
  <g>
    <Stroke d={feathered(from, to, 26, 21)} width={0.8} colour="#4b5a60" />
    <Stroke d={`M${from.join(' ')} L${to.join(' ')}`} width={wide + 2.4} />
    <Stroke d={`M${from.join(' ')} L${to.join(' ')}`} width={wide} colour="#f5efd8" />
  </g>
);

export const Thrips = () => (
  <g>
    <Pair>
      <Limb joints="128 56, 148 44, 158 30" thick={4.4} tint={straw} />
      <Limb joints="132 76, 156 74, 170 64" thick={4.4} tint={straw} />
      <Limb joints="132 94, 152 112, 160 130" thick={4.4} tint={straw} />
      <Stick from={[130, 92]} to={[186, 168]} wide={3.4} />
      <Stick from={[130, 78]} to={[204, 140]} wide={4.4} />
      <Antenna bow="124 28, 131 12, 148 4" joints={7} width={2} bead={2.6} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 96, 15 100, 18 124, 16 152, 10 178, 3 196, 0 199')} tint="#c99a4a" />
      <Body d={outline('0 64, 16 68, 17 84, 14 98, 0 102')} tint={straw} />
      <Body d={outline('0 46, 12 48, 15 58, 11 67, 0 68')} tint={straw} />
      <Body d={outline('0 24, 9 26, 12 36, 9 47, 0 48')} tint={straw} />
    </g>
    <Pair>
      <Dot at={[129, 32]} r={3.8} colour="#7d1f1a" />
      <Stroke d="M124 194 l4 14 M128 182 l8 14 M131 168 l7 8" width={1.6} />
    </Pair>
    <Stroke
      d="M104 116 q16 6 32 0 M104 130 q16 6 32 0 M105 144 q15 6 30 0 M108 158 q12 5 24 0 M111 172 q9 4 18 0"
      width={1.2}
    />
    <Stipple middle={[124, 140]} half={[14, 46]} dots={36} seed={4} />
  </g>
);

export const ThripsLarva = () => (
  <g>
    <Pair>
      <Limb joints="128 70, 148 56, 158 44" thick={4.4} tint="#f1e6a2" />
      <Limb joints="131 86, 154 84, 166 76" thick={4.4} tint="#f1e6a2" />
      <Limb joints="132 102, 152 118, 160 132" thick={4.4} tint="#f1e6a2" />
      <Antenna bow="124 40, 130 26, 142 18" joints={5} width={2.2} bead={2.6} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 58, 14 62, 17 84, 18 112, 16 144, 9 170, 4 184, 0 187')} tint="#f1e6a2" />
      <Body d={outline('0 37, 8 39, 11 48, 9 58, 0 60')} tint="#f1e6a2" />
    </g>
    <Pair>
      <Dot at={[128, 44]} r={3.4} colour="#c23a2b" />
      <Stroke d="M124 182 l3 11 M129 168 l6 8 M135 140 l6 5 M137 112 l6 3" width={0.9} />
    </Pair>
    <Stroke
      d="M105 76 q15 5 30 0 M103 92 q17 5 34 0 M102 106 q18 5 36 0 M102 120 q18 5 36 0 M103 134 q17 5 34 0 M106 148 q14 5 28 0 M109 160 q11 4 22 0 M112 172 q8 4 16 0"
      colour="#a8985a"
    />
    <Stipple middle={[124, 126]} half={[14, 50]} dots={34} seed={4} />
  </g>
);

/** From the side: the fork under the tail is what leaps. */
export const Springtail = () => (
  <g>
    <path d="M0 182 C40 174 70 188 120 182 C170 176 200 188 240 182 V214 H0 Z" fill="#e3d8c8" />
    <Limb joints="88 134, 80 160, 70 182" thick={3.6} tint="#c9cfd6" />
    <Limb joints="104 138, 100 162, 94 184" thick={3.6} tint="#c9cfd6" />
    <Limb joints="120 138, 122 162, 118 184" thick={3.6} tint="#c9cfd6" />
    <path
      d={smooth('172 136, 176 152, 166 166, 148 172, 132 176')}
      fill="none"
      stroke="#15212b"
      stroke-width="7"
      stroke-linecap="round"
    />
    <path
      d={smooth('172 136, 176 152, 166 166, 148 172, 132 176')}
      fill="none"
      stroke="#c9cfd6"
      stroke-width="4"
      stroke-linecap="round"
    />
    <Stroke d="M146 172 L126 170 M146 174 L128 182" width={2.2} />
    <Antenna bow="60 104, 38 92, 24 70" joints={4} width={2.6} bead={3} />
    <Antenna bow="58 110, 34 106, 16 92" joints={4} width={2.6} bead={3} />
    <g data-measured="">
      <Body
        d={smooth('76 100, 104 86, 140 84, 170 94, 186 112, 182 130, 160 142, 120 144, 86 138, 74 122', true)}
        tint="#c9cfd6"
      />
      <Body d={smooth('52 110, 58 98, 74 96, 84 108, 80 124, 66 130, 54 122', true)} tint="#c9cfd6" />
    </g>
    <Dot at={[64, 108]} r={3.6} />
    <Stroke
      d="M94 92 C100 108 100 126 94 140 M114 86 C120 104 120 126 114 143 M136 84 C142 102 142 126 136 143 M158 90 C164 106 162 126 156 142 M174 98 C176 110 176 122 170 136"
      colour="#6d7780"
    />
    <Stroke d="M110 90 l-2 -8 M128 86 l0 -8 M146 86 l3 -8 M164 92 l6 -7 M180 104 l8 -5" width={0.9} />
    <Stipple middle={[138, 120]} half={[44, 22]} dots={46} seed={3} />
  </g>
);
