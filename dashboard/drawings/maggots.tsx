/** Without legs: larvae of flies that eat aphids, and of flies from the compost; with eggs and pupa of hoverflies. */
import { outline, oval, smooth } from './lines.ts';
import { Body, ink, Leaf, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const rings = (from: number, step: number, halves: readonly number[]): string =>
  halves.map((half, i) => `M${120 - half} ${from + i * step}q${half} ${5} ${2 * half} 0`).join('');

export const MidgeLarva = () => (
  <g>
    <Leaf />
    <Body d={outline('0 28, 4 30, 10 48, 17 84, 20 124, 18 162, 11 188, 0 193')} tint="#ee8f3c" measured />
    <Stroke
      d={rings(46, 12, [8, 11, 13, 15, 16.5, 17.5, 18.2, 18.4, 18, 17, 15, 12])}
      colour="#8a4a18"
      width={1.2}
    />
    <path
      d="M120 60 C126 84 114 108 121 132 C126 150 118 164 120 174"
      fill="none"
      stroke="#c55d1c"
      stroke-width="6"
      stroke-linecap="round"
    />
    <Stroke d="M117 32 l-3 -8 M123 32 l3 -8" width={1.3} />
    <Stroke d="M112 188 l-4 8 M128 188 l4 8 M118 191 l-1 8 M123 191 l1 8" width={1.1} />
    <Stroke d="M108 150 C104 128 106 104 112 84" colour="#fff" width={2.6} />
    <Stipple middle={[126, 128]} half={[14, 56]} dots={40} seed={9} />
  </g>
);

export const HoverflyLarva = () => (
  <g>
    <Leaf />
    <Body
      d={smooth(
        '120 22, 126 26, 131 50, 138 84, 143 122, 141 160, 130 186, 118 192, 104 186, 97 158, 98 120, 106 84, 112 50, 115 27',
        true,
      )}
      tint="#e7eacb"
      measured
    />
    <path
      d="M121 54 C128 70 113 84 120 100 C128 116 111 128 119 144 C124 156 117 164 120 174"
      fill="none"
      stroke="#5d4a34"
      stroke-width="8"
      stroke-linecap="round"
    />
    <path
      d="M109 96 C104 122 104 150 110 172 M132 96 C136 122 136 150 130 172"
      fill="none"
      stroke="#fff"
      stroke-width="5"
      stroke-linecap="round"
    />
    <Stroke d={rings(48, 13, [9, 12, 14, 16, 18, 20, 21, 21.5, 21, 19, 15])} colour="#8a8f68" width={1} />
    <Stroke d="M116 190 v10 M123 190 v10" width={4} />
    <Stroke d="M118 24 l-2 -6 M122 24 l2 -6" width={1.6} />
    <Stipple middle={[126, 130]} half={[18, 56]} dots={56} seed={3} />
  </g>
);

export const HoverflyPupa = () => (
  <g>
    <Leaf />
    <Body d={outline('0 58, 24 62, 35 84, 33 116, 22 146, 9 164, 0 168')} tint="#d99b52" measured />
    <Stroke d="M90 82 q10 8 20 0 t20 0 t20 0" width={3.4} colour="#6d3f16" />
    <Stroke d="M89 100 q10 8 20 0 t20 0 t22 0" width={3.4} colour="#6d3f16" />
    <Stroke d="M94 118 q9 8 18 0 t18 0 t16 0" width={3} colour="#6d3f16" />
    <Stroke d="M100 136 q8 7 14 0 t14 0 t12 0" width={2.6} colour="#6d3f16" />
    <Stroke d="M116 166 v9 M124 166 v9" width={3.4} />
    <Stroke d="M96 112 C92 98 94 84 102 74" colour="#fff" width={3} />
    <Stipple middle={[126, 112]} half={[28, 46]} dots={46} seed={3} />
  </g>
);

export const HoverflyEgg = () => (
  <g>
    <Leaf />
    <path d={oval(126, 120, 22, 54)} fill="#dfe9df" />
    <Body
      d={smooth('118 66, 130 72, 139 96, 140 124, 132 150, 120 157, 109 150, 104 126, 104 98, 109 74', true)}
      tint="#fdfdf8"
      measured
    />
    <Stroke
      d="M112 82 l6 12 M122 76 l5 12 M131 90 l3 12 M110 102 l5 12 M120 98 l5 12 M130 112 l3 12 M110 124 l5 12 M120 122 l5 12 M129 134 l2 8 M117 142 l4 9"
      colour="#9aa6a2"
      width={1.3}
    />
    <Stipple middle={[126, 116]} half={[12, 36]} dots={18} seed={3} />
  </g>
);

const wing = smooth('130 78, 156 70, 196 78, 226 100, 228 114, 206 118, 172 112, 142 98', true);
export const HoverflyAdult = () => (
  <g>
    <Pair>
      <Limb joints="128 70, 150 52, 164 36" thick={2.4} />
      <Limb joints="132 92, 160 128, 172 146" thick={2.4} />
      <Limb joints="130 102, 150 152, 160 178" thick={2.4} />
      <Body d={wing} tint="#fafcfb" width={1.5} />
      <Stroke
        d="M132 82 C164 76 198 86 226 108 M140 88 C168 90 196 98 216 116 M176 80 C180 92 178 102 174 112 M200 86 C204 98 202 108 198 116"
        colour="#4b5a60"
      />
      <Stroke d="M124 36 l3 -9 l5 -1" width={2.2} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 98, 16 104, 21 128, 19 156, 10 178, 0 184')} tint="#f2b632" />
      <Body d={outline('0 62, 14 65, 18 80, 14 98, 0 102')} tint="#4d5446" />
      <Body d={outline('0 36, 14 38, 21 50, 14 61, 0 64')} tint="#e4c98a" />
    </g>
    <path d={oval(134, 51, 8, 11)} fill="#8f3f2b" stroke={ink} stroke-width="1.4" />
    <path d={oval(106, 51, 8, 11)} fill="#8f3f2b" stroke={ink} stroke-width="1.4" />
    <Stroke d="M101 124 q19 8 38 0 M101 146 q19 8 38 0 M106 166 q14 6 28 0" width={7} />
    <Stroke d="M103 134 q17 6 34 0 M104 156 q16 6 32 0" width={1.6} />
    <Stroke d="M110 74 C112 84 112 90 110 96 M130 74 C128 84 128 90 130 96" colour="#8a8f7a" />
  </g>
);

/** Inside shines through its glassy skin. */
export const GnatLarva = () => (
  <g>
    <Body
      d={smooth(
        '108 42, 122 40, 127 62, 124 96, 132 130, 140 164, 134 194, 126 198, 120 188, 122 164, 114 132, 106 96, 106 62',
        true,
      )}
      tint="#f7f9f4"
      measured
    />
    <path
      d="M115 58 C118 80 112 100 120 124 C128 146 132 164 128 184"
      fill="none"
      stroke="#8d8a72"
      stroke-width="5"
      stroke-linecap="round"
    />
    <Stroke
      d="M107 58 q10 4 20 0 M106 74 q10 4 20 0 M107 90 q9 4 18 -1 M109 106 q9 3 18 -3 M113 122 q8 3 17 -4 M118 138 q8 2 16 -4 M121 154 q8 2 17 -4 M123 170 q8 2 16 -3"
      colour="#9aa6a2"
    />
    <Body d={oval(115, 33, 9.5, 11)} tint={ink} />
    <Stroke d="M110 36 C108 32 110 28 113 26" colour="#fff" width={2} />
    <Stipple middle={[132, 170]} half={[8, 24]} dots={16} seed={6} />
  </g>
);

export const ShoreFlyLarva = () => (
  <g>
    <path d="M0 176 C40 168 70 190 120 180 C170 170 200 190 240 178 V214 H0 Z" fill="#d8e4cc" />
    <Body
      d={smooth(
        '120 30, 128 36, 138 64, 143 100, 140 134, 131 158, 120 163, 109 158, 100 134, 97 100, 102 64, 112 36',
        true,
      )}
      tint="#efe9d3"
      measured
    />
    <Stroke d={rings(50, 13, [12, 17, 20, 22, 23, 22.5, 21, 18, 13])} colour="#9a916d" />
    <path
      d="M118 162 C118 176 112 186 106 196 M122 162 C122 176 128 186 134 196"
      fill="none"
      stroke={ink}
      stroke-width="6.4"
      stroke-linecap="round"
    />
    <path
      d="M118 162 C118 176 112 186 107 194 M122 162 C122 176 128 186 133 194"
      fill="none"
      stroke="#efe9d3"
      stroke-width="3.4"
      stroke-linecap="round"
    />
    <Stroke d="M118 34 l2 10 l2 -10" width={2.2} />
    <Stipple middle={[126, 104]} half={[18, 52]} dots={50} seed={6} />
  </g>
);
