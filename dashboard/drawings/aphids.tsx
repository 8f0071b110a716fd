/** Aphids: without wings, with wings, the cast skin; and the mummies that wasps make of them. */
import { outline, oval, seeded, smooth } from './lines.ts';
import { Antenna, Body, Dot, ink, Leaf, Limb, Pair, paper, Stipple, Stroke } from './pen.tsx';

const green = '#cfdc9c';
const pear = outline('0 36, 12 38, 19 50, 30 84, 39 124, 33 156, 16 172, 0 176');
const aphidLegs: readonly string[] = [
  '140 66, 166 52, 186 28, 194 22',
  '150 92, 182 88, 208 106, 217 108',
  '156 112, 190 130, 210 176, 214 188',
];

interface AphidProps {
  tint: string;
  tubes: string;
  lines?: string;
  outlineWidth?: number;
}
function AphidBody({ tint, tubes, lines = '#7d8a4e', outlineWidth = 1.8 }: AphidProps) {
  return (
    <g>
      <Pair>
        {aphidLegs.map((joints) => (
          <Limb key={joints} joints={joints} thick={3.2} tint={tint} />
        ))}
        <Antenna bow="130 42, 166 14, 176 72" joints={5} width={1.5} />
      </Pair>
      <Body d={outline('0 170, 6 172, 6 184, 0 192')} tint={tint} width={1.4} />
      <Body d={pear} tint={tint} measured width={outlineWidth} />
      <Pair>
        <Stroke d="M142 150 L154 184" width={7.4} />
        <Stroke d="M142 150 L153.6 183" width={4.6} colour={tubes} />
        <Stroke d="M152.8 181 L154 184" width={5} />
        <Stroke colour={lines} d="M120 66 Q134 68 140 62 M120 84 Q140 88 148 80" />
        <Stroke
          colour={lines}
          d="M120 104 Q144 110 154 100 M120 122 Q146 128 158 118 M120 138 Q142 146 156 136 M120 154 Q136 160 146 154"
        />
      </Pair>
    </g>
  );
}
export const Aphid = () => (
  <g>
    <AphidBody tint={green} tubes={green} />
    <Pair>
      <Dot at={[134, 50]} r={3.6} colour="#7d1f1a" />
    </Pair>
    <Stipple middle={[124, 128]} half={[32, 44]} dots={70} seed={7} />
  </g>
);

export const CastSkin = () => (
  <g>
    <Leaf />
    <g transform="rotate(-16 120 112)">
      <AphidBody tint="#fbfcfb" tubes="#fbfcfb" lines="#b3bdb9" outlineWidth={1.3} />
      <path
        d="M120 44 C126 64 127 92 120 122 C114 92 114 64 120 44 Z"
        fill="#d5dedb"
        stroke={ink}
        stroke-width="1.2"
      />
    </g>
  </g>
);

const frontWing = smooth('130 84, 160 58, 200 38, 228 38, 234 52, 222 72, 188 88, 150 96', true);
const hindWing = smooth('132 98, 160 98, 190 104, 204 116, 194 126, 164 120, 138 108', true);
export const WingedAphid = () => (
  <g>
    <Pair>
      <Limb joints="132 80, 150 62, 160 40" thick={2.4} />
      <Limb joints="134 112, 158 142, 166 166" thick={2.4} />
      <Limb joints="132 128, 150 164, 152 194" thick={2.4} />
      <Body d={hindWing} tint="#fafcfb" width={1.4} />
      <Body d={frontWing} tint="#fafcfb" width={1.6} />
      <path d="M196 41 L222 37 L222 44 L198 48 Z" fill={ink} />
      <Stroke
        d="M132 86 C160 64 190 48 222 42 M154 70 C170 76 178 82 182 89 M170 60 C186 66 198 74 204 82 M188 52 C204 56 216 60 228 64"
        colour="#4b5a60"
      />
      <Antenna bow="126 54, 146 34, 152 4" joints={5} width={1.5} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 108, 16 112, 22 132, 17 154, 8 166, 0 170')} tint={green} />
      <Body d={outline('0 66, 14 70, 19 88, 16 106, 0 112')} tint="#39423f" />
      <Body d={outline('0 50, 10 51, 13 60, 8 69, 0 70')} tint="#4b544f" width={1.5} />
    </g>
    <Pair>
      <Dot at={[132, 58]} r={3.6} colour="#7d1f1a" />
      <Stroke d="M134 150 L142 170" width={4.6} />
      <Stroke d="M120 124 Q132 128 138 122 M120 138 Q132 142 140 136" colour="#6d7a45" />
    </Pair>
    <path d={outline('0 164, 4 166, 3 176, 0 178')} fill={green} stroke={ink} stroke-width="1.2" />
  </g>
);

const stumps =
  'M84 78 L62 66 L56 54 M76 108 L52 110 L44 104 M82 138 L60 152 L56 164 M156 78 L178 66 L184 54 M164 108 L188 110 L196 104 M158 138 L180 152 L184 164';

interface MummyProps {
  tint: string;
  slim?: boolean;
}
function Mummy({ tint, slim = false, shade = '#8a6a35' }: MummyProps & { shade?: string }) {
  const d = slim
    ? outline('0 46, 16 48, 28 68, 36 108, 31 150, 15 176, 0 180')
    : outline('0 40, 20 42, 44 66, 56 108, 48 152, 22 184, 0 188');
  return (
    <g>
      <Pair>
        <Antenna bow="130 46, 160 34, 176 52" joints={4} width={1.4} />
      </Pair>
      <Stroke d={stumps} width={2.6} />
      <Body d={d} tint={tint} measured />
      <Pair>
        <Stroke
          colour={shade}
          d="M120 70 Q138 74 148 66 M120 92 Q144 98 154 90 M120 116 Q144 122 156 112 M120 138 Q142 144 152 136"
        />
      </Pair>
    </g>
  );
}
const Lid = () => (
  <g>
    <path d={oval(121, 158, 17, 15)} fill={ink} stroke={ink} stroke-width="1.6" />
    <Body d={oval(146, 180, 15, 11)} tint="#d9b16c" width={1.5} />
    <Stroke d="M133 168 l5 6" width={2.4} />
  </g>
);
export const TanMummy = () => (
  <g>
    <Leaf />
    <Mummy tint="#dfba77" />
    <Stroke d="M80 126 C76 104 80 82 92 66" colour="#fff6dc" width={3.4} />
    <Stipple middle={[126, 110]} half={[46, 60]} dots={60} seed={21} />
    <Lid />
  </g>
);
export const BlackMummy = () => (
  <g>
    <Leaf />
    <Mummy tint="#2a2f31" slim shade="#6d787a" />
    <Stroke d="M94 134 C90 108 92 84 102 66" colour="#dfe7e6" width={2.4} />
    <path d={oval(120, 158, 12, 11)} fill="#fff" stroke={ink} stroke-width="1.8" />
    <Stroke d="M112 152 A12 11 0 0 1 128 150" width={3.4} colour="#6d787a" />
  </g>
);

/** Edge of a hole that was gnawed: short and long teeth by turns, the same on each drawing. */
function ragged(x: number, y: number, r: number): string {
  const random = seeded(5);
  const teeth = Array.from({ length: 18 }, (_, i) => {
    const reach = r * (i % 2 === 0 ? 1 : 0.66 + 0.2 * random());
    const angle = (i / 18) * 2 * Math.PI;
    return `${(x + reach * Math.cos(angle)).toFixed(1)} ${(y + reach * Math.sin(angle)).toFixed(1)}`;
  });
  return `M${teeth.join('L')}Z`;
}
export const RaggedMummy = () => (
  <g>
    <Leaf />
    <Mummy tint="#dfba77" />
    <Stroke d="M80 126 C76 104 80 82 92 66" colour="#fff6dc" width={3.4} />
    <path d={ragged(126, 112, 21)} fill={ink} stroke={ink} stroke-width="1.4" stroke-linejoin="round" />
    <Stroke d="M108 100 l-8 -6 M144 100 l8 -8 M146 122 l9 4 M112 128 l-6 7 M128 134 l2 9" width={1} />
    <Stipple middle={[126, 110]} half={[46, 60]} dots={40} seed={21} />
  </g>
);

/** From the side: the empty aphid on its cushion of silk. */
export const CushionMummy = () => (
  <g>
    <Stroke d="M6 196 H234" colour="#6d8b6f" width={2.4} />
    <path
      d={smooth('50 196, 58 168, 88 158, 120 156, 152 158, 182 168, 190 196')}
      fill={paper}
      stroke={ink}
      stroke-width="1.8"
      data-measured=""
    />
    <Stroke
      d="M62 194 L74 166 M78 194 L88 160 M96 194 L102 158 M112 194 L114 157 M128 194 L127 157 M144 194 L140 158 M162 194 L153 160 M178 194 L167 165 M60 186 Q120 176 180 186 M70 174 Q120 166 170 174"
      colour="#8fa09b"
      width={0.9}
    />
    <Body
      d={smooth('58 128, 66 108, 96 92, 132 92, 160 106, 178 128, 174 148, 148 158, 96 158, 68 148', true)}
      tint="#e9d3a0"
    />
    <Stroke d="M72 112 L58 92 L40 88 M70 120 L48 112 L36 118" width={1.6} />
    <Stroke d="M90 156 l-10 12 M116 158 l-2 10 M142 157 l8 12" width={2.4} />
    <Stroke d="M166 112 L184 92" width={5} />
    <Stroke d="M178 132 l14 4" width={4} />
    <Dot at={[71, 121]} r={3.4} colour="#7d1f1a" />
    <Stroke d="M92 98 Q98 126 94 154 M112 92 Q120 126 116 158 M134 92 Q144 126 138 157" colour="#8a6a35" />
    <Stipple middle={[130, 132]} half={[44, 24]} dots={50} seed={6} />
  </g>
);
