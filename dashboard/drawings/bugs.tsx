/** Bugs that hunt, with the beak folded below the head. */
import { outline, oval } from './lines.ts';
import { Antenna, Body, Dot, ink, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const bugLegs: readonly string[] = [
  '136 66, 162 52, 176 30, 180 22',
  '148 88, 182 90, 204 80, 212 76',
  '150 112, 184 130, 198 168, 206 180',
];
const Legs = ({
  tint,
  thick = 4,
  legs = bugLegs,
}: {
  tint: string;
  thick?: number;
  legs?: typeof bugLegs;
}) => (
  <Pair>
    {legs.map((joints) => (
      <Limb key={joints} joints={joints} tint={tint} thick={thick} />
    ))}
  </Pair>
);

export const OriusAdult = () => (
  <g>
    <Legs tint="#d9b98a" />
    <Pair>
      <Antenna bow="129 28, 150 14, 170 16" joints={4} width={3} bead={2.2} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 84, 36 90, 40 116, 38 150, 24 180, 0 191')} tint="#f6efe0" />
      <Body d={outline('0 48, 18 52, 36 80, 26 87, 0 90')} tint={ink} />
      <Body d={outline('0 23, 10 26, 16 38, 13 48, 0 52')} tint={ink} />
    </g>
    <path d={outline('0 88, 18 88, 10 104, 0 118')} fill={ink} />
    <Pair>
      <path
        d="M140 92 C150 96 156 104 158 118 L136 136 L123 116 Z"
        fill="#e9d7ad"
        stroke={ink}
        stroke-width="1.2"
      />
      <path d="M158 116 L160 140 L142 148 L134 136 Z" fill={ink} />
      <path
        d="M132 138 L142 148 L157 144 C152 164 140 182 121 190 L121 152 Z"
        fill="#d5dedb"
        stroke={ink}
        stroke-width="1.1"
      />
      <path d={oval(134, 35, 4.4, 5.4)} fill="#8f2f24" stroke={ink} stroke-width="1" />
    </Pair>
    <path d="M120 118 L132 137 L120 156 L108 137 Z" fill="#fff" stroke={ink} stroke-width="1.2" />
    <Stroke d="M106 66 C110 60 114 58 118 57" colour="#dfe7e6" width={2.4} />
    <Stipple middle={[132, 162]} half={[18, 22]} dots={20} seed={2} />
  </g>
);

const nymphLegs: readonly string[] = [
  '134 72, 160 58, 174 40, 180 34',
  '142 90, 172 92, 192 88, 200 86',
  '146 108, 174 124, 186 156, 194 166',
];
export const OriusNymph = () => (
  <g>
    <Legs tint="#edc876" legs={nymphLegs} />
    <Stroke d="M120 56 C119 70 119 84 120 98" width={4} />
    <Pair>
      <Antenna bow="127 46, 146 32, 162 36" joints={4} width={3} bead={2.2} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 42, 9 44, 14 54, 18 72, 28 98, 36 130, 31 160, 15 182, 0 187')} tint="#eeb85a" />
    </g>
    <Stroke
      d="M106 58 q14 6 28 0 M102 76 q18 7 36 0 M96 94 q24 8 48 0 M88 116 q32 8 64 0 M85 134 q35 8 70 0 M88 152 q32 8 64 0 M97 168 q23 7 46 0"
      colour="#9a6a1c"
      width={1.2}
    />
    <Pair>
      <path d={oval(131, 51, 4, 4.8)} fill="#c2281e" stroke={ink} stroke-width="1" />
      <path
        d="M128 78 C140 82 146 90 148 106 C138 104 130 96 128 78 Z"
        fill="#dd9c35"
        stroke="#9a6a1c"
        stroke-width="1"
      />
    </Pair>
    <path d={oval(120, 132, 10, 8)} fill="#d9772a" />
    <Stipple middle={[126, 134]} half={[28, 42]} dots={50} seed={2} />
  </g>
);

const longLegs: readonly string[] = [
  '128 70, 160 58, 186 26, 190 16',
  '132 88, 176 92, 214 76, 222 72',
  '132 106, 172 130, 206 190, 216 206',
];
export const Macrolophus = () => (
  <g>
    <Pair>
      <Stroke d="M127 44 L138 30" width={5.4} />
      <Antenna bow="138 30, 160 8, 186 14" joints={3} width={2} />
    </Pair>
    <Legs tint="#c3dc9a" legs={longLegs} thick={2.8} />
    <g data-measured="">
      <Body d={outline('0 84, 15 88, 18 116, 19 150, 16 180, 0 197')} tint="#b6d47f" />
      <Body d={outline('0 58, 10 60, 16 84, 11 90, 0 91')} tint="#b6d47f" />
      <Body d={outline('0 38, 9 40, 12 50, 9 58, 0 61')} tint="#b6d47f" />
    </g>
    <Pair>
      <path d={oval(131, 48, 3.6, 4.4)} fill="#8f2f24" stroke={ink} stroke-width="1" />
      <Stroke d="M131 54 L131 60" width={3} />
      <Stroke d="M124 92 C132 110 138 130 139 152" colour="#5f8a45" />
    </Pair>
    <path d="M112 90 L128 90 L120 110 Z" fill="#a5c76b" stroke={ink} stroke-width="1.2" />
    <path
      d="M120 150 L137 156 L134 180 L120 196 L106 180 L103 156 Z"
      fill="#e9f2dd"
      stroke={ink}
      stroke-width="1.2"
    />
    <Dot at={[134, 152]} r={2.6} />
    <Dot at={[106, 152]} r={2.6} />
    <Stipple middle={[126, 132]} half={[12, 34]} dots={26} seed={2} />
  </g>
);

export const FlowerBug = () => (
  <g>
    <Legs tint="#cf8a4a" />
    <Pair>
      <Antenna bow="129 28, 154 10, 178 20" joints={4} width={3} bead={2.2} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 82, 30 88, 34 116, 33 152, 21 182, 0 194')} tint="#b5793f" />
      <Body d={outline('0 50, 13 54, 31 80, 22 87, 0 89')} tint={ink} />
      <Body d={outline('0 22, 9 25, 13 38, 11 50, 0 54')} tint={ink} />
    </g>
    <path d={outline('0 87, 17 87, 9 104, 0 116')} fill={ink} />
    <Pair>
      <path
        d="M122 116 L150 92 C153 104 154 120 153 136 L138 140 Z"
        fill="#c98f54"
        stroke={ink}
        stroke-width="1.2"
      />
      <path d="M154 134 L152 152 L138 146 L138 139 Z" fill={ink} />
      <path
        d="M121 128 L137 140 L151 154 C146 170 136 184 121 193 Z"
        fill="#eef2f0"
        stroke={ink}
        stroke-width="1.1"
      />
      <path d="M121 148 L134 156 C134 166 130 176 121 184 Z" fill="#5a5048" />
      <path d={oval(131, 35, 3.8, 5)} fill="#5d2019" stroke={ink} stroke-width="1" />
    </Pair>
    <Stroke d="M112 66 C114 60 117 58 119 57 M94 118 C94 108 97 102 102 98" colour="#f3e4d2" width={2.6} />
  </g>
);
