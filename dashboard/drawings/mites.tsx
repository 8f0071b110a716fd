/** Mites: the pest in its two dresses, the runners, and their eggs. */
import { outline, oval, points } from './lines.ts';
import { Body, Dot, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const slowBody = outline('0 47, 22 50, 40 70, 47 104, 43 146, 26 180, 0 190');
const slowLegs: readonly string[] = [
  '136 58, 160 44, 176 32, 188 16',
  '150 74, 176 66, 194 58, 210 50',
  '156 138, 182 150, 198 164, 210 182',
  '146 162, 168 182, 178 198, 186 214',
];
const runnerBody = outline('0 46, 9 52, 17 76, 29 108, 42 142, 45 164, 34 184, 0 191');
const runnerLegs: readonly string[] = [
  '128 66, 156 50, 180 30, 202 4',
  '136 84, 168 70, 194 62, 216 44',
  '146 112, 178 116, 202 126, 220 144',
  '152 132, 186 146, 208 172, 222 206',
];

const Legs = ({ legs, tint, thick }: { legs: typeof slowLegs; tint: string; thick: number }) => (
  <Pair>
    {legs.map((joints) => (
      <Limb key={joints} joints={joints} tint={tint} thick={thick} />
    ))}
  </Pair>
);
const Snout = ({ tint, y }: { tint: string; y: number }) => (
  <Body
    d={outline([
      [0, y - 18],
      [5, y - 14],
      [7, y],
      [0, y + 4],
    ])}
    tint={tint}
    width={1.5}
  />
);

/** Long hairs of the back, standing out past the rim. */
const longHairs =
  'M128 62 L136 32 M140 78 L164 66 M150 96 L182 92 M152 122 L186 126 M144 150 L172 168 M132 172 L144 204 M126 100 L138 82 M128 128 L146 118 M126 150 L140 158';

function SlowMite({ tint, patches, eyes }: { tint: string; patches: boolean; eyes: string }) {
  return (
    <g>
      <Legs legs={slowLegs} tint={tint} thick={5.4} />
      <Snout tint={tint} y={48} />
      <Body d={slowBody} tint={tint} measured />
      {patches && (
        <g>
          <Stipple middle={[93, 102]} half={[16, 26]} dots={210} seed={4} shade={0} />
          <Stipple middle={[147, 102]} half={[16, 26]} dots={210} seed={9} shade={0} />
        </g>
      )}
      <Pair>
        <Dot at={[138, 68]} r={3} colour={eyes} />
        <Stroke d={longHairs} width={0.9} />
      </Pair>
      <Stipple middle={[122, 140]} half={[36, 42]} dots={46} seed={2} />
    </g>
  );
}

export const SpiderMite = () => <SlowMite tint="#e9ecc6" patches eyes="#a3372c" />;
export const WinterMite = () => <SlowMite tint="#e8824f" patches={false} eyes="#7d1f1a" />;

function Runner({ tint, hairs }: { tint: string; hairs: string }) {
  return (
    <g>
      <Legs legs={runnerLegs} tint={tint} thick={4.8} />
      <Snout tint={tint} y={48} />
      <Body d={runnerBody} tint={tint} measured />
      <Stroke d="M108 78 L104 92" colour="#fff" width={4} />
      <Stroke d="M101 102 C94 122 90 142 92 160" colour="#fff" width={4} />
      <Pair>
        <Stroke d={hairs} width={0.9} />
      </Pair>
      <Stipple middle={[126, 146]} half={[34, 42]} dots={90} seed={6} />
    </g>
  );
}
export const RedRunner = () => (
  <Runner
    tint="#eba06a"
    hairs="M128 62 L140 50 M146 112 L156 104 M160 148 L172 144 M150 182 L160 200 M128 190 L134 206 M128 104 L136 96 M132 140 L142 132"
  />
);
export const PaleRunner = () => (
  <Runner tint="#f3e3c4" hairs="M128 62 L136 54 M148 112 L154 108 M150 182 L156 192 M128 190 L133 202" />
);

const Web = () => (
  <Stroke
    colour="#8fa09b"
    width={0.9}
    d="M0 40 L240 96 M0 104 L240 60 M0 160 L240 130 M10 216 L232 176 M30 0 L84 220 M112 0 L130 220 M206 0 L170 220 M64 56 Q120 92 190 74 M56 150 Q120 128 184 152"
  />
);
const glassBalls = points('82 78, 152 104, 96 150');
export const SpiderMiteEggs = () => (
  <g>
    <Web />
    {glassBalls.map(([x, y], i) => (
      <g key={x}>
        <Body d={oval(x, y, 23.5, 23.5)} tint={i === 2 ? '#f1e6b0' : '#f7faf8'} measured={i === 0} />
        <Stroke d={`M${x - 13} ${y + 3} A14 14 0 0 1 ${x + 1} ${y - 14}`} colour="#9aa6a2" width={2.4} />
        <Stipple middle={[x + 4, y + 5]} half={[15, 15]} dots={12} seed={i + 2} />
      </g>
    ))}
  </g>
);

export const PredatorEgg = () => (
  <g>
    <Stroke colour="#7f9c83" width={2.4} d="M120 0 C116 70 118 120 108 218 M117 116 C150 92 190 74 236 66" />
    <Stroke
      colour="#7f9c83"
      width={1.2}
      d="M122 60 q14 -6 24 -22 M118 150 q16 2 30 -8 M150 94 q6 -16 4 -30 M176 82 q10 -12 10 -26 M112 186 q-16 -2 -28 -16 M118 90 q-14 -4 -26 -18"
    />
    <g transform="rotate(-34 146 132)">
      <Body d={oval(146, 132, 34, 26)} tint="#f8f1e2" measured />
      <Stroke d="M122 126 A26 18 0 0 1 146 113" colour="#c7bda6" width={2.4} />
      <Stipple middle={[152, 138]} half={[24, 17]} dots={22} seed={3} />
    </g>
  </g>
);
