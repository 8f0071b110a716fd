/**
 * The roof of ten panes: of ten possible seasons like this one, in how many does the pest pass the
 * limit if it is left? Shaded panes = that many. Without a chance the roof is dotted.
 */
import { paneWords, shadedPanes } from '../words/chances.ts';

const panes = 10;
const [topLeft, topRight, bottomLeft, bottomRight, top, bottom] = [22, 306, 2, 326, 8, 66];
const across = (share: number, depth: number): string => {
  const left = topLeft + (bottomLeft - topLeft) * depth;
  const right = topRight + (bottomRight - topRight) * depth;
  return `${(left + (right - left) * share).toFixed(1)} ${(top + (bottom - top) * depth).toFixed(1)}`;
};

const outline = (from: number, to: number) =>
  `M${across(from, 0)}L${across(to, 0)}L${across(to, 1)}L${across(from, 1)}Z`;

/** The lower edge of an overlapping sheet of glass. */
const lap = (pane: number, depth: number) =>
  `M${across(pane / panes + 0.012, depth)}Q${across((pane + 0.5) / panes, depth + 0.13)} ${across((pane + 1) / panes - 0.012, depth)}`;

export function Roof({ chance }: { chance: number | undefined }) {
  const shaded = chance === undefined ? 0 : shadedPanes(chance);
  const label = chance === undefined ? 'A roof of dotted panes: too little to say.' : `${paneWords(chance)}.`;
  return (
    <svg
      class={chance === undefined ? 'roof dotted' : 'roof'}
      viewBox="0 0 328 74"
      role="img"
      aria-label={label}
    >
      <path class="roof-glass" d={outline(0, 1)} />
      {Array.from({ length: panes }, (_, pane) => {
        const share = Math.max(0, Math.min(1, shaded - pane));
        return (
          <g key={pane}>
            <path
              class="roof-shade"
              style={{ opacity: share > 0 ? 1 : 0, transitionDelay: `${pane * 24}ms` }}
              d={outline(pane / panes + 0.006, (pane + (share || 1)) / panes - 0.006)}
            />
            <path
              class={share === 1 ? 'roof-lap on-shade' : 'roof-lap'}
              d={lap(pane, 0.36) + lap(pane, 0.7)}
            />
            {share === 0 && chance !== undefined && (
              <path
                class="roof-lap"
                d={`M${across((pane + 0.62) / panes, 0.1)}L${across((pane + 0.36) / panes, 0.3)}`}
              />
            )}
          </g>
        );
      })}
      <path
        class="roof-bars"
        d={Array.from({ length: panes - 1 }, (_, bar) => {
          const share = (bar + 1) / panes;
          return `M${across(share, 0)}L${across(share, 1)}`;
        }).join('')}
      />
      <path class="roof-frame" d={`M${across(0, 0)}L${across(0, 1)}M${across(1, 0)}L${across(1, 1)}`} />
      <path class="roof-frame" d="M19 4H309M0 71H328" />
      <path class="roof-frame strong" d="M19 8H309M0 67H328" />
    </svg>
  );
}
