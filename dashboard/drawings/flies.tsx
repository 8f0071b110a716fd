/** Flies of the card and the compost: one pair of wings, two knobs behind them. */
import { outline, oval, smooth } from './lines.ts';
import { Antenna, Body, Dot, ink, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const thin: readonly string[] = [
  '126 66, 150 40, 168 22, 178 4',
  '130 82, 176 72, 206 92, 226 92',
  '128 96, 162 142, 172 182, 184 210',
];
const knobs = 'M130 92 l9 7';

export const FungusGnat = () => (
  <g>
    <Pair>
      {thin.map((joints) => (
        <Limb key={joints} joints={joints} thick={2.4} />
      ))}
      <path
        d={smooth('128 76, 148 84, 182 116, 204 152, 204 170, 190 172, 166 154, 142 122, 130 96', true)}
        fill="#dfe4e4"
        stroke={ink}
        stroke-width="1.7"
      />
      <Stroke d="M130 78 C154 88 184 116 203 150" width={2.4} />
      <Stroke d="M132 86 C146 100 156 114 166 126" width={1.8} />
      <Stroke d="M166 126 C178 138 190 150 199 168 M166 126 C172 142 178 156 184 170" width={1.8} />
      <Stroke d="M131 90 C142 110 154 132 170 156" colour="#6b7d79" />
      <Stroke d={knobs} width={2} />
      <Dot at={[140, 100]} r={3.6} />
      <Antenna bow="125 42, 150 16, 164 30" joints={15} width={1.2} bead={2.3} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 92, 10 96, 13 122, 11 154, 6 178, 0 190')} tint="#5a5650" />
      <Body d={outline('0 56, 13 60, 18 76, 13 92, 0 98')} tint="#3d3b38" />
      <Body d={outline('0 40, 9 42, 12 50, 8 58, 0 60')} tint="#2a2928" />
    </g>
    <Stroke
      d="M109 110 q11 5 22 0 M108 124 q12 5 24 0 M108 138 q12 5 24 0 M110 152 q10 5 20 0 M113 166 q7 4 14 0"
      colour="#c7c2b8"
      width={1.3}
    />
  </g>
);

/** Frail, with legs half again as long as the body; only the male's antennae are long and hairy. */
export const AphidMidge = () => (
  <g>
    <Pair>
      <Limb joints="126 72, 166 46, 196 10, 204 2" thick={1.9} />
      <Limb joints="128 84, 186 78, 222 108, 236 122" thick={1.9} />
      <Limb joints="126 94, 170 132, 178 186, 186 214" thick={1.9} />
      <path
        d={smooth('127 78, 146 84, 180 112, 200 142, 198 154, 180 156, 154 138, 134 104', true)}
        fill="#f3f0ee"
        stroke={ink}
        stroke-width="1.5"
      />
      <Stroke
        d="M130 80 C154 90 182 116 199 144 M131 86 C148 104 168 130 184 155 M132 92 C140 110 150 126 160 140"
        colour="#7d6f70"
      />
      <Antenna bow="123 54, 138 14, 176 40" joints={13} width={1} bead={2.2} />
      <Stroke
        d="M128 40 l-6 -7 M131 35 l-3 -9 M136 31 l-1 -9 M141 29 l2 -9 M147 28 l4 -8 M153 29 l6 -7 M159 31 l8 -5 M164 34 l9 -3 M128 42 l8 4 M133 37 l6 7 M139 33 l4 8 M146 32 l1 9 M153 33 l-1 9 M160 36 l-3 8"
        width={0.7}
      />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 92, 8 96, 10 116, 9 142, 5 164, 0 174')} tint="#dca08e" />
      <Body d={outline('0 64, 12 68, 15 82, 10 94, 0 98')} tint="#b98273" />
      <Body d={outline('0 52, 8 54, 10 60, 7 67, 0 69')} tint="#3a302e" />
    </g>
    <Stroke
      d="M111 108 q9 4 18 0 M110 122 q10 4 20 0 M111 136 q9 4 18 0 M113 150 q7 3 14 0"
      colour="#8a5648"
    />
  </g>
);

const stout: readonly string[] = [
  '132 66, 154 46, 170 34, 182 30',
  '140 86, 174 84, 194 96, 208 98',
  '136 104, 166 130, 178 164, 190 178',
];
const stoutWing = smooth('136 78, 158 84, 190 118, 206 158, 198 182, 178 186, 154 158, 138 112', true);
const paleSpots: readonly (readonly [x: number, y: number, r: number])[] = [
  [164, 112, 7],
  [162, 136, 6.4],
  [184, 136, 7.4],
  [178, 160, 7],
  [196, 162, 6],
];
export const ShoreFly = () => (
  <g>
    <Pair>
      {stout.map((joints) => (
        <Limb key={joints} joints={joints} thick={3.6} />
      ))}
    </Pair>
    <g data-measured="">
      <Body d={outline('0 98, 20 102, 26 126, 21 156, 10 174, 0 180')} tint="#3a3f40" />
      <Body d={outline('0 58, 18 62, 25 80, 19 98, 0 104')} tint="#2b3031" />
      <Body d={outline('0 36, 15 38, 22 48, 16 58, 0 60')} tint="#343a3b" />
    </g>
    <Pair>
      <path d={stoutWing} fill="#aeb7b6" stroke={ink} stroke-width="1.7" />
      {paleSpots.map(([x, y, r]) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r={r} fill="#fff" stroke="#7d8886" stroke-width="0.8" />
      ))}
      <Stroke
        d="M138 82 C162 92 192 124 204 166 M139 88 C154 104 176 150 186 184 M139 96 C146 118 156 146 168 172"
        colour="#5b6765"
      />
      <Stroke d="M126 37 l4 -7 M130 30 l5 -3" width={2.6} />
      <path d={oval(135, 47, 5.6, 7.4)} fill="#7a2a20" stroke={ink} stroke-width="1.1" />
    </Pair>
    <Stroke d="M112 68 C108 78 108 86 112 94" colour="#dfe7e6" width={2} />
  </g>
);

export const LeafMiner = () => (
  <g>
    <Pair>
      {stout.map((joints) => (
        <Limb key={joints} joints={joints} thick={3} />
      ))}
    </Pair>
    <g data-measured="">
      <Body d={outline('0 98, 18 102, 23 126, 18 154, 8 172, 0 178')} tint="#3a3f40" />
      <Body d={outline('0 58, 18 62, 24 78, 18 92, 0 98')} tint="#2b3031" />
      <Body d={outline('0 36, 15 38, 21 48, 15 58, 0 60')} tint="#f0cf3f" />
    </g>
    <Stroke d="M100 118 q20 6 40 0 M99 132 q21 6 42 0 M102 146 q18 6 36 0" colour="#d9c25a" width={1.6} />
    <path
      d="M108 86 Q120 80 132 86 L128 99 Q120 104 112 99 Z"
      fill="#f5d02a"
      stroke={ink}
      stroke-width="1.4"
    />
    <Pair>
      <path d="M140 62 L146 76 L142 88 L137 76 Z" fill="#f5d02a" stroke={ink} stroke-width="1" />
      <path d={stoutWing} fill="#f3f6f5" fill-opacity="0.85" stroke={ink} stroke-width="1.7" />
      <Stroke
        d="M138 82 C162 92 192 124 204 166 M139 88 C154 104 176 150 186 184 M139 96 C146 118 156 146 168 172 M166 112 l-10 10"
        colour="#5b6765"
      />
      <Stroke d="M126 37 l4 -7 M130 30 l5 -3" width={2.4} />
      <path d={oval(135, 47, 5.4, 7)} fill="#7a2a20" stroke={ink} stroke-width="1.1" />
    </Pair>
    <Stipple middle={[126, 138]} half={[16, 30]} dots={20} seed={4} />
  </g>
);
