/** Lacewings: egg on its hair, larva, cocoon, adult. */
import { outline, oval, points, seeded, smooth } from './lines.ts';
import { Antenna, Body, Dot, ink, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const cream = '#eedfc4';

const hanging = points('64 150, 122 170, 182 146');
/** A leaf seen from its edge; the eggs hang from its underside. */
export const LacewingEgg = () => (
  <g>
    <path
      d={smooth('0 10, 60 16, 128 12, 190 18, 240 8, 240 30, 180 38, 120 32, 60 36, 0 28', true)}
      fill="#dfe9df"
      stroke={ink}
      stroke-width="1.6"
    />
    {hanging.map(([x, y], i) => (
      <g key={x}>
        <Stroke
          d={`M${x + 6 - 4 * i} 34 C${x + 10 - 6 * i} 80 ${x + 4 - 5 * i} 116 ${x} ${y - 9}`}
          width={1.2}
        />
        <Dot at={[x + 6 - 4 * i, 35]} r={2.6} />
        <Body d={oval(x, y, 6.5, 11)} tint={i === 1 ? '#cfd3cc' : '#cfe0a6'} width={1.5} measured={i === 0} />
        <Stroke d={`M${x - 3} ${y + 3} v-6`} colour="#fff" width={1.6} />
      </g>
    ))}
  </g>
);

/** Middle and half width of each segment behind the head. */
const segments = points(
  '72 13, 86 17, 100 19, 112 21, 124 21.5, 136 20.5, 148 18.5, 159 15.5, 169 12, 178 8.5, 186 5.5',
);
const larvaLegs: readonly string[] = [
  '130 72, 158 56, 178 42, 184 34',
  '134 86, 168 82, 192 82, 199 88',
  '136 100, 164 112, 182 136, 184 145',
];
const tuft = (x: number, y: number): string =>
  [-62, -32, 0, 32, 62]
    .map((deg) => {
      const angle = (deg * Math.PI) / 180;
      return `M${x} ${y}l${(13 * Math.cos(angle)).toFixed(1)} ${(13 * Math.sin(angle)).toFixed(1)}`;
    })
    .join('');

export const LacewingLarva = () => (
  <g>
    <Pair>
      {larvaLegs.map((joints) => (
        <Limb key={joints} joints={joints} tint={cream} thick={4.6} />
      ))}
      <path
        d="M126 46 C142 40 146 22 131 11 C128 9 124 12 127 15 C135 23 132 33 121 38 Z"
        fill="#a5713c"
        stroke={ink}
        stroke-width="1.6"
        stroke-linejoin="round"
      />
      <Antenna bow="131 47, 144 40, 154 42" joints={4} width={1.2} />
    </Pair>
    <g data-measured="">
      {[...segments].reverse().map(([y, half]) => (
        <g key={y}>
          <Pair>
            {half > 7 && <Stroke d={tuft(120 + half + 3, y)} width={0.9} />}
            {half > 7 && <Body d={oval(120 + half + 1, y, 4.4, 4.4)} tint={cream} width={1.2} />}
          </Pair>
          <Body d={oval(120, y, half, 8)} tint={cream} width={1.5} />
        </g>
      ))}
      <Body d={outline('0 40, 11 42, 14 52, 10 63, 0 65')} tint={cream} />
    </g>
    <Pair>
      <Stroke d="M126 46 L128 62" width={3.4} colour="#8f3f2b" />
      {segments.slice(0, 10).map(([y, half]) => (
        <Stroke
          key={y}
          d={`M${120 + half * 0.5} ${y - 5} v9`}
          width={Math.min(5, half * 0.3)}
          colour="#8f3f2b"
        />
      ))}
      <Dot at={[132, 50]} r={2.6} />
    </Pair>
    <Stipple middle={[124, 124]} half={[17, 54]} dots={40} seed={4} />
  </g>
);

/** Loose threads, bowed around the ball. */
function threads(): string {
  const random = seeded(11);
  return Array.from({ length: 46 }, () => {
    const from = random() * 2 * Math.PI;
    const to = from + 0.8 + random() * 1.6;
    const [r, R] = [44 + random() * 20, 58 + random() * 14];
    const at = (radius: number, angle: number) =>
      `${(120 + radius * Math.cos(angle)).toFixed(1)} ${(112 + radius * Math.sin(angle)).toFixed(1)}`;
    return `M${at(r, from)}Q${at(R, (from + to) / 2)} ${at(r, to)}`;
  }).join('');
}
export const LacewingCocoon = () => (
  <g>
    <Stroke
      d="M0 70 C40 90 60 96 76 96 M240 168 C206 150 186 142 168 138 M20 196 C60 176 80 160 88 150"
      colour="#8fa09b"
    />
    <Body d={oval(120, 112, 60, 60)} tint="#fcfcf8" measured />
    <path
      d={smooth(
        '96 88, 124 76, 150 92, 156 120, 138 144, 112 148, 94 134, 104 118, 120 122, 132 110, 120 100, 104 104',
        true,
      )}
      fill="#e6dfc6"
    />
    <Stroke
      d="M112 82 q4 10 0 18 M132 78 q0 12 -4 22 M150 96 q-10 6 -18 8 M154 120 q-12 0 -20 -2 M140 142 q-6 -10 -10 -18 M114 148 q2 -12 4 -24"
      colour="#b9ad86"
    />
    <Stroke d={threads()} colour="#7d8a86" width={0.9} />
    <Stipple middle={[128, 120]} half={[48, 48]} dots={40} seed={4} />
  </g>
);

const wing = smooth('124 68, 146 74, 172 110, 184 156, 180 196, 164 208, 146 192, 130 140', true);
const veins = [
  'M124 70 C146 96 168 142 172 204',
  'M124 72 C140 104 154 150 160 206',
  'M124 76 C134 112 142 150 150 194',
  'M134 74 C158 100 174 142 180 190',
  'M136 92 l8 -8 M142 104 l11 -12 M148 118 l12 -14 M154 132 l12 -14 M159 146 l12 -12 M163 160 l12 -10 M167 174 l12 -9 M170 188 l10 -7',
  'M130 96 l8 -6 M134 112 l10 -7 M138 128 l11 -8 M142 144 l12 -8 M146 160 l12 -8 M150 176 l12 -8 M154 192 l13 -9',
  'M148 84 l8 -2 M156 94 l8 -2 M163 106 l7 -2 M169 120 l7 -2 M174 134 l6 -1 M177 150 l6 -1 M179 166 l5 0',
].join('');
export const LacewingAdult = () => (
  <g>
    <Pair>
      <Limb joints="128 58, 152 44, 166 26" thick={2} />
      <Limb joints="132 72, 164 74, 186 64" thick={2} />
      <Limb joints="134 84, 196 112, 208 134" thick={2} />
      <Antenna bow="124 32, 150 12, 196 4" joints={14} width={1.1} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 66, 9 72, 9 120, 7 156, 0 162')} tint="#b9d07e" />
      <Body d={outline('0 28, 9 30, 12 38, 8 46, 0 48')} tint="#b9d07e" width={1.5} />
    </g>
    <Pair>
      <path d={wing} fill="#f6fbf4" fill-opacity="0.86" stroke={ink} stroke-width="1.7" />
      <Stroke d={veins} colour="#5f8a55" width={0.9} />
    </Pair>
    <Body d={outline('0 46, 11 50, 13 66, 8 82, 0 86')} tint="#b9d07e" />
    <Stroke d="M120 52 V150" colour="#f3efb0" width={3} />
    <Pair>
      <path d={oval(133, 37, 5, 6.5)} fill="#d9a520" stroke={ink} stroke-width="1.2" />
      <Stroke d="M124 66 C146 76 176 116 184 160" width={1.5} />
    </Pair>
  </g>
);
