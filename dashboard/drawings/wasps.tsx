/** Small wasps and ants: a narrow waist, and four wings or none. */
import { outline, oval, type Points, points, smooth } from './lines.ts';
import { Antenna, Body, ink, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const fringeOf = (through: Points): string =>
  points(through)
    .map(([x, y]) => `M${x} ${y}l8 7`)
    .join('');

export const WhiteflyWasp = () => (
  <g>
    <Pair>
      <Limb joints="132 70, 156 56, 170 42" thick={4} tint="#f3e08a" />
      <Limb joints="136 90, 168 98, 184 92" thick={4} tint="#f3e08a" />
      <Limb joints="132 104, 158 140, 168 168" thick={4} tint="#f3e08a" />
      <path
        d={smooth('134 88, 156 100, 186 134, 186 142, 166 130, 142 108', true)}
        fill="#fafcfb"
        stroke={ink}
        stroke-width="1.3"
      />
      <path
        d={smooth('132 78, 162 84, 206 112, 226 138, 222 150, 202 146, 166 120, 138 96', true)}
        fill="#fafcfb"
        stroke={ink}
        stroke-width="1.6"
      />
      <Stroke d="M134 80 C156 86 176 94 192 104" width={2.2} />
      <Stroke d={fringeOf('226 136, 224 144, 219 150, 210 149, 202 146')} width={0.8} />
      <Antenna bow="127 44, 150 22, 160 34" joints={7} width={2.6} bead={2.6} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 100, 16 104, 27 126, 26 154, 14 180, 0 192')} tint="#f5d535" />
      <Body d={outline('0 62, 20 66, 27 84, 19 100, 0 106')} tint="#2b2623" />
      <Body d={outline('0 36, 16 40, 23 50, 15 62, 0 64')} tint="#2b2623" />
    </g>
    <Pair>
      <path d={oval(137, 49, 5, 6.4)} fill="#6d3a2a" stroke={ink} stroke-width="1" />
    </Pair>
    <Stroke
      d="M97 122 q23 7 46 0 M94 138 q26 7 52 0 M96 154 q24 7 48 0 M102 168 q18 6 36 0"
      colour="#9a8420"
    />
    <Stroke d="M104 74 C102 82 103 90 107 96" colour="#dfe7e6" width={2} />
    <Stipple middle={[126, 146]} half={[20, 38]} dots={40} seed={4} />
  </g>
);

export const AphidWasp = () => (
  <g>
    <Pair>
      <Limb joints="130 70, 152 48, 166 34" thick={3} tint="#d99a3f" />
      <Limb joints="134 84, 170 90, 190 84" thick={3} tint="#d99a3f" />
      <Limb joints="130 98, 160 138, 168 172" thick={3} tint="#d99a3f" />
      <path
        d={smooth('132 90, 156 100, 180 124, 182 134, 164 130, 142 110', true)}
        fill="#fafcfb"
        stroke={ink}
        stroke-width="1.2"
      />
      <path
        d={smooth('132 78, 168 78, 210 96, 230 118, 226 132, 204 134, 166 112, 138 94', true)}
        fill="#fafcfb"
        stroke={ink}
        stroke-width="1.6"
      />
      <path d="M182 82 L206 92 L186 93 Z" fill="#f0dc9a" stroke={ink} stroke-width="1.2" />
      <Stroke
        d="M134 80 C152 78 168 78 182 82 M186 93 C190 104 188 112 180 118 M140 90 C160 98 176 108 190 126"
        colour="#4b5a60"
      />
      <Antenna bow="125 40, 146 0, 212 14" joints={14} width={1.5} bead={1.9} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 98, 3 100, 4 116, 11 134, 13 156, 7 178, 0 190')} tint="#b0662b" />
      <Body d={outline('0 58, 14 62, 19 78, 13 94, 0 101')} tint="#2b2623" />
      <Body d={outline('0 36, 12 38, 18 48, 12 58, 0 60')} tint="#2b2623" />
    </g>
    <Pair>
      <path d={oval(133, 47, 4.6, 6)} fill="#6d3a2a" stroke={ink} stroke-width="1" />
    </Pair>
    <Stroke
      d="M110 134 q10 4 20 0 M108 148 q12 5 24 0 M109 162 q11 4 22 0 M113 174 q7 3 14 0"
      colour="#5c3413"
    />
    <Stroke d="M118 188 l-1 12 M122 188 l1 12" width={1.6} />
    <Stroke d="M108 70 C106 78 107 84 110 90" colour="#dfe7e6" width={2} />
  </g>
);

const antLegs: readonly string[] = [
  '126 84, 156 66, 178 36, 188 26',
  '127 98, 166 104, 202 92, 214 94',
  '126 112, 158 136, 190 182, 202 196',
];
export const Ant = () => (
  <g>
    <Pair>
      {antLegs.map((joints) => (
        <Limb key={joints} joints={joints} thick={3.4} />
      ))}
      <Stroke d="M128 42 L156 34" width={3.4} />
      <Antenna bow="156 34, 166 18, 172 4" joints={9} width={2.4} bead={2.3} />
      <path d="M128 30 C126 22 122 20 121 22 L122 32 Z" fill="#3a2b22" stroke={ink} stroke-width="1.2" />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 138, 16 144, 26 164, 20 186, 0 199')} tint="#3a2b22" />
      <Body d={outline('0 120, 8 124, 9 132, 6 139, 0 141')} tint="#4b382d" />
      <Body d={outline('0 66, 14 70, 15 84, 9 100, 10 112, 0 122')} tint="#3a2b22" />
      <Body d={outline('0 28, 15 32, 21 46, 17 62, 0 68')} tint="#3a2b22" />
    </g>
    <Pair>
      <path d={oval(136, 46, 3.4, 5)} fill={ink} />
    </Pair>
    <Stroke d="M98 162 q22 7 44 0 M100 176 q20 6 40 0" colour="#8a7466" width={1.3} />
    <Stroke
      d="M110 40 C107 46 107 52 109 58 M112 78 C111 86 112 92 114 98 M104 164 C103 172 105 180 108 186"
      colour="#dfe7e6"
      width={2}
    />
  </g>
);
