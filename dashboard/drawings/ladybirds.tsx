/** Ladybirds: eggs, larva, pupa, adult; and the one that eats mealybugs. */
import { outline, oval, points, smooth } from './lines.ts';
import { Antenna, Body, Dot, ink, Leaf, Limb, Pair, Stipple, Stroke } from './pen.tsx';

const orange = '#f0a022';
const slate = '#5a646b';

/** Places of the eggs, back row first. */
const clutch = points(
  '72 70, 104 62, 138 64, 170 74, 56 100, 88 94, 120 90, 154 96, 186 106, 74 128, 106 124, 140 126, 170 134',
);
export const LadybirdEggs = () => (
  <g>
    <Leaf />
    <path d={oval(122, 150, 92, 34)} fill="#dfe9df" />
    {clutch.map(([x, y], i) => (
      <g key={`${x} ${y}`} transform={`rotate(${(x - 120) / 8} ${x} ${y + 30})`}>
        <Body
          d={smooth(
            [
              [x, y - 2],
              [x + 9, y + 12],
              [x + 12, y + 30],
              [x + 8, y + 50],
              [x, y + 53],
              [x - 8, y + 50],
              [x - 12, y + 30],
              [x - 9, y + 12],
            ],
            true,
          )}
          tint="#f3b73a"
          width={1.6}
          measured={i === 9}
        />
        <Stroke d={`M${x - 6} ${y + 32} Q${x - 6} ${y + 18} ${x - 2} ${y + 8}`} colour="#fff" width={1.8} />
      </g>
    ))}
  </g>
);

/** Middle of each abdominal segment from above and its half width. */
const abdomen = points('88 27, 101 29, 114 28.5, 127 27.5, 140 25.5, 153 22.5, 166 18.5, 178 14, 188 9');
const larvaLegs: readonly string[] = [
  '138 46, 166 30, 186 14, 192 10',
  '142 60, 176 54, 204 50, 210 53',
  '142 74, 172 88, 194 110, 199 116',
];
export const LadybirdLarva = () => (
  <g>
    <Pair>
      {larvaLegs.map((joints) => (
        <Limb key={joints} joints={joints} tint="#3f484e" thick={5.5} />
      ))}
    </Pair>
    <g data-measured="">
      {[...abdomen].reverse().map(([y, half], i) => (
        <g key={y}>
          <Body d={oval(120, y, half, 8.6)} tint={slate} width={1.5} />
          {[0.26, 0.58, 0.92].map((share, column) => {
            const marked = column > 0 && (i === 8 || i === 5);
            return (
              <Pair key={share}>
                <circle
                  cx={120 + half * share}
                  cy={y}
                  r={marked ? 5 : Math.min(3.4, half * 0.14)}
                  fill={marked ? orange : ink}
                  stroke={ink}
                  stroke-width="1"
                />
                <Stroke
                  d={`M${120 + half * share + 2} ${y - 2} l4 -4 M${120 + half * share + 2} ${y} l5 0`}
                  width={0.8}
                />
              </Pair>
            );
          })}
        </g>
      ))}
      <Body d={oval(120, 74, 27, 9)} tint={slate} width={1.5} />
      <Body d={oval(120, 58, 26, 9.5)} tint={slate} width={1.5} />
      <Body d={oval(120, 42, 23, 10)} tint={slate} width={1.5} />
      <Body d={outline('0 14, 12 17, 15 26, 11 34, 0 36')} tint={ink} />
    </g>
    <Pair>
      <ellipse cx="131" cy="74" rx="7" ry="5" fill={ink} />
      <ellipse cx="131" cy="58" rx="7" ry="5.4" fill={ink} />
      <ellipse cx="130" cy="42" rx="6.4" ry="5.4" fill={ink} />
      <path d={oval(138, 38, 4.4, 3.4)} fill={orange} stroke={ink} stroke-width="0.8" />
      <Antenna bow="127 17, 132 10, 137 9" joints={3} width={1.6} />
    </Pair>
  </g>
);

export const LadybirdPupa = () => (
  <g>
    <Leaf />
    <Body d={outline('0 168, 14 172, 24 184, 16 200, 0 203')} tint="#4b5258" />
    <Stroke
      d="M104 180 l-14 -6 M104 188 l-16 4 M136 180 l14 -6 M136 188 l16 4 M110 198 l-8 10 M130 198 l8 10"
      width={1.6}
    />
    <Body d={outline('0 40, 24 44, 41 66, 45 98, 40 134, 26 162, 0 174')} tint="#ee9a3a" measured />
    <Stroke d="M98 46 Q120 62 142 46" width={1.6} />
    <Stroke d="M80 76 C94 104 106 112 120 114 C134 112 146 104 160 76" width={1.4} />
    <Stroke d="M78 118 Q120 132 162 118 M84 136 Q120 150 156 136 M92 152 Q120 164 148 152" width={1.2} />
    <Pair>
      <path d={oval(134, 60, 6, 5)} fill={ink} />
      <path d={oval(150, 84, 5, 9)} fill={ink} />
      <path d={oval(131, 126, 7, 5)} fill={ink} />
      <path d={oval(151, 122, 4, 5)} fill={ink} />
      <path d={oval(130, 142, 6, 4.4)} fill={ink} />
      <path d={oval(128, 158, 5, 3.6)} fill={ink} />
    </Pair>
    <Stroke d="M92 92 C88 80 90 70 96 62" colour="#fff" width={3} />
    <Stipple middle={[124, 120]} half={[38, 48]} dots={60} seed={12} />
  </g>
);

const beetleLegs: readonly string[] = [
  '150 66, 176 50, 190 34, 196 26',
  '168 104, 196 102, 212 110, 218 118',
  '160 150, 184 164, 192 184, 196 194',
];

interface BeetleProps {
  cases: string;
  shield: string;
  head: string;
  children: preact.ComponentChildren;
}
/** A dome of 154 x 120 with shield and head in front. */
const Beetle = ({ cases, shield, head, children }: BeetleProps) => (
  <g>
    <Pair>
      {beetleLegs.map((joints) => (
        <Limb key={joints} joints={joints} thick={5} />
      ))}
      <Antenna bow="130 38, 142 30, 150 32" joints={5} width={1.5} />
    </Pair>
    <g data-measured="">
      <Body d={outline('0 34, 14 36, 20 46, 14 56, 0 58')} tint={head} />
      <Body d={outline('0 50, 24 44, 42 52, 46 66, 30 74, 0 76')} tint={shield} />
      <Body d={outline('0 66, 30 68, 54 88, 60 122, 50 160, 26 183, 0 188')} tint={cases} />
    </g>
    <Stroke d="M120 66 V188" width={1.6} />
    {children}
  </g>
);

const spots = points('146 98, 161 128, 140 148');
export const Ladybird = () => (
  <Beetle cases="#d2492c" shield={ink} head={ink}>
    <path d={oval(120, 78, 12, 11)} fill={ink} />
    <Pair>
      {spots.map((at) => (
        <Dot key={at.join(' ')} at={at} r={10.5} />
      ))}
      <path d="M140 51 L158 55 L160 66 C150 66 142 60 140 51 Z" fill="#fff" />
      <path d={oval(127, 46, 3, 2.2)} fill="#fff" />
      <path d={oval(129, 72, 5, 3)} fill="#fff" />
    </Pair>
    <Stroke d="M76 138 C70 120 74 102 86 90" colour="#fff" width={3.4} />
    <Stipple middle={[126, 134]} half={[52, 50]} dots={70} seed={14} />
  </Beetle>
);

export const MealybugLadybird = () => (
  <Beetle cases="#3a3330" shield="#e2843c" head="#e2843c">
    <path
      d={outline('0 176, 16 176, 31 176, 24 184, 0 188')}
      fill="#e2843c"
      stroke={ink}
      stroke-width="1.4"
    />
    <Pair>
      <Dot at={[132, 45]} r={3.2} />
    </Pair>
    <Stroke d="M78 138 C72 120 76 104 88 92" colour="#d9d2cc" width={3} />
    <Stroke
      d="M92 100 l-3 6 M104 96 l-3 6 M140 100 l-2 6 M152 112 l-2 6 M96 130 l-2 6 M110 140 l-2 6 M146 140 l-2 6 M132 120 l-2 6 M100 158 l-2 6 M136 162 l-2 6"
      colour="#a59b94"
      width={0.9}
    />
  </Beetle>
);
