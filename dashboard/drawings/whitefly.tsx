/** Whitefly: adults, eggs, crawler, and the flat scales with what became of them. */
import { fringe, outline, oval, smooth } from './lines.ts';
import { Antenna, Body, Dot, ink, Leaf, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const red = '#a3372c';
const cream = '#f6f1da';
const middle = [120, 112] as const;
const half = [47.5, 76] as const;

/** Rings of the abdomen and the seam of the chest, as they shine through. */
const Seams = ({ colour = '#8d8a72' }: { colour?: string }) => (
  <g>
    <Stroke colour={colour} d="M120 62 V100" />
    {[112, 122, 132, 142, 152].map((y, i) => (
      <Stroke key={y} colour={colour} d={`M${94 + i * 3} ${y} Q120 ${y + 8} ${146 - i * 3} ${y}`} />
    ))}
  </g>
);

const Rim = ({ colour = '#8d8a72' }: { colour?: string }) => (
  <path d={oval(120, 112, 38, 66)} fill="none" stroke={colour} stroke-width={1.1} stroke-dasharray="2 3" />
);

/** Wax rods: long ones stand out to the sides. */
const rods =
  'M86 66 L60 50 M154 66 L180 50 M78 96 L48 92 M162 96 L192 92 M78 132 L50 142 M162 132 L190 142 M92 168 L76 196 M148 168 L164 196';

export const LivingScale = () => (
  <g>
    <Leaf />
    <Stroke d={fringe(middle, half, { count: 76, length: 7 })} width={0.9} />
    <Body d={oval(120, 112, 47.5, 76)} tint={cream} measured />
    <Rim />
    <Seams />
    <Stroke d={rods} width={2.6} colour={ink} />
    <Stroke d={rods} width={1.2} colour="#fff" />
    <ellipse cx="103" cy="68" rx="4.4" ry="3" fill={red} />
    <ellipse cx="137" cy="68" rx="4.4" ry="3" fill={red} />
    <Stipple middle={[120, 112]} half={[42, 70]} dots={60} seed={3} />
  </g>
);

const dark = '#20282d';
const gloss = 'M88 150 C80 128 80 104 88 82 M95 156 C88 132 88 106 95 80';

export const BlackScale = () => (
  <g>
    <Leaf />
    <Stroke d={fringe(middle, half, { count: 76, length: 6 })} width={0.9} />
    <Body d={oval(120, 112, 47.5, 76)} tint={dark} measured />
    <Rim colour="#7d8a8d" />
    <Seams colour="#59666b" />
    <Stroke d={gloss} colour="#dfe7e6" width={2.2} />
  </g>
);

export const TanScale = () => (
  <g>
    <Leaf />
    <Stroke d={fringe(middle, half, { count: 76, length: 6 })} width={0.9} />
    <Body d={oval(120, 112, 47.5, 76)} tint="#dcb477" measured />
    <Rim colour="#8a6a35" />
    <path d={outline('0 78, 17 92, 21 116, 14 142, 0 154')} fill="#a97c3c" opacity="0.75" />
    <Stroke
      colour="#6d4d1f"
      d="M108 104 Q120 110 132 104 M107 118 Q120 124 133 118 M110 132 Q120 138 130 132"
    />
    <Dot at={[110, 90]} r={3.4} colour="#6d3b1f" />
    <Dot at={[130, 90]} r={3.4} colour="#6d3b1f" />
    <Stipple middle={[120, 112]} half={[42, 70]} dots={50} seed={8} />
  </g>
);

/** A round window with what the wasp left inside. */
export const HoleScale = () => (
  <g>
    <Leaf />
    <Stroke d={fringe(middle, half, { count: 76, length: 6 })} width={0.9} />
    <Body d={oval(120, 112, 47.5, 76)} tint="#4a4640" measured />
    <Rim colour="#a39d90" />
    <Seams colour="#8b8577" />
    <path d={oval(120, 74, 16, 15)} fill="#fff" stroke={ink} stroke-width="1.8" />
    <Stroke width={1.4} d="M104 73 l3 -5 l3 3 l3 -6 l4 4 l4 -5 l4 4 l4 -3 l3 5 l4 1" />
    <ellipse cx="113" cy="79" rx="3.6" ry="2.4" fill={ink} />
    <ellipse cx="122" cy="82" rx="3.8" ry="2.4" fill={ink} />
    <ellipse cx="127" cy="76" rx="3.4" ry="2.2" fill={ink} />
    <Stroke d={gloss} colour="#cfcabd" width={2} />
  </g>
);

export const EmptyCase = () => (
  <g>
    <Leaf />
    <Stroke d={fringe(middle, half, { count: 76, length: 7 })} width={0.9} colour="#6b7d79" />
    <Body d={oval(120, 112, 47.5, 76)} tint="#fdfefd" width={1.5} measured />
    <Rim colour="#b3bdb9" />
    <path
      d="M120 50 C126 66 126 84 122 98 L118 98 C114 84 114 66 120 50 Z"
      fill="#cfd9d6"
      stroke={ink}
      stroke-width="1.5"
    />
    <path
      d="M84 102 C98 92 110 95 120 98 C130 95 142 92 156 102 C142 101 130 104 120 107 C110 104 98 101 84 102 Z"
      fill="#cfd9d6"
      stroke={ink}
      stroke-width="1.5"
    />
    <Stroke
      colour="#9aa6a2"
      d="M98 122 Q120 130 142 122 M100 134 Q120 142 140 134 M104 146 Q120 154 136 146"
    />
  </g>
);

const HeadOfAdult = ({ y }: { y: number }) => (
  <g>
    <Pair>
      <Antenna
        bow={[
          [126, y - 8],
          [142, y - 22],
          [158, y - 24],
        ]}
        joints={6}
      />
    </Pair>
    <Body
      d={outline([
        [0, y - 12],
        [13, y - 8],
        [19, y + 2],
        [13, y + 11],
        [0, y + 14],
      ])}
      tint="#f0dc82"
    />
    <Pair>
      <path d={oval(135, y - 2, 3.6, 6)} fill={red} stroke={ink} stroke-width="1" />
    </Pair>
  </g>
);

export const GlasshouseWhitefly = () => (
  <g>
    <Pair>
      <Limb joints="132 52, 158 46, 174 30" thick={2.6} />
      <Limb joints="140 66, 172 76, 192 70" thick={2.6} />
      <Limb joints="152 110, 186 128, 204 146" thick={2.6} />
    </Pair>
    <Body d={outline('0 38, 15 44, 20 60, 12 78, 0 80')} tint="#f0dc82" />
    <HeadOfAdult y={34} />
    <g data-measured="">
      <Body d={smooth('122 50, 100 58, 78 104, 63 152, 72 176, 98 178, 118 172, 124 120', true)} />
      <Body d={smooth('118 50, 140 58, 162 104, 177 152, 168 176, 142 178, 116 174, 112 120', true)} />
    </g>
    <Stroke
      colour="#8fa09b"
      d="M124 60 C140 90 152 128 156 168 M116 60 C100 90 88 128 84 168 M134 92 C130 130 134 154 138 172"
    />
    <Stipple middle={[140, 128]} half={[30, 44]} dots={46} seed={5} colour="#6b7d79" />
  </g>
);

export const TobaccoWhitefly = () => (
  <g>
    <Pair>
      <Limb joints="130 66, 152 58, 164 44" thick={2.6} />
      <Limb joints="136 84, 158 94, 172 90" thick={2.6} />
      <Limb joints="140 118, 162 134, 174 150" thick={2.6} />
    </Pair>
    <Body d={outline('0 56, 13 62, 15 82, 13 120, 8 160, 0 168')} tint="#efd455" />
    <Stroke
      d="M112 110 Q120 114 128 110 M112 126 Q120 130 128 126 M113 142 Q120 146 127 142"
      colour="#8a7420"
    />
    <HeadOfAdult y={52} />
    <g data-measured="">
      <Pair>
        <Body d={smooth('124 66, 136 70, 143 96, 144 140, 138 164, 128 172, 124 150, 123 100', true)} />
      </Pair>
    </g>
    <Pair>
      <Stroke colour="#8fa09b" d="M130 76 C136 104 137 134 134 162" />
    </Pair>
    <Stipple middle={[134, 124]} half={[9, 40]} dots={22} seed={5} colour="#6b7d79" />
  </g>
);

interface EggProps {
  x: number;
  y: number;
  tint: string;
  lean: number;
}
/** A spindle of 108 x 36 on its peg, blunt end down. */
const Egg = ({ x, y, tint, lean }: EggProps) => (
  <g transform={`translate(${x - 120} ${y - 120}) rotate(${lean} 120 176)`}>
    <Stroke d="M120 172 v10" width={3} />
    <Body
      d={outline('0 66, 7 76, 15 104, 18 138, 14 164, 6 173, 0 174')}
      tint={tint}
      measured={tint === '#f4ebb4'}
    />
    <Stroke d="M111 146 C107 126 110 100 117 84" colour="#fff" width={1.8} />
  </g>
);
export const WhiteflyEggs = () => (
  <g>
    <Leaf />
    <Stroke d="M22 196 C80 182 160 184 220 200" colour="#6d8b6f" width={2} />
    <Egg x={62} y={134} tint="#f4ebb4" lean={-14} />
    <Egg x={122} y={127} tint="#8d7f93" lean={2} />
    <Egg x={182} y={134} tint="#2b2a30" lean={16} />
  </g>
);

export const Crawler = () => (
  <g>
    <Leaf />
    <Stroke d={fringe([120, 112], [35, 63], { count: 30, length: 9 })} width={0.9} />
    <Pair>
      <Limb joints="138 80, 156 72, 164 62" thick={4} tint="#f3efcf" />
      <Limb joints="142 108, 162 110, 172 106" thick={4} tint="#f3efcf" />
      <Limb joints="138 136, 156 148, 164 162" thick={4} tint="#f3efcf" />
      <Antenna bow="126 54, 132 42, 142 36" joints={3} width={1.8} />
    </Pair>
    <Body d={outline('0 49, 20 54, 33 82, 35 116, 28 152, 12 172, 0 175')} tint="#f3efcf" measured />
    <Pair>
      <Dot at={[132, 72]} r={4} colour={red} />
    </Pair>
    <Seams />
    <Stroke d="M113 172 l-4 24 M127 172 l4 24" />
  </g>
);
