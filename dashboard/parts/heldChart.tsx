/** The figure of the season's counts over what was said of them. */
import { useMemo } from 'preact/hooks';
import { heldFigure } from '../figures/heldFigure.ts';
import { type HeldFigureData, heldAloud, heldTable } from '../figures/heldWords.ts';
import type { Palette } from '../figures/palette.ts';
import { Figure } from './figure.tsx';

interface HeldChartProps {
  title: string;
  data: HeldFigureData;
  explained?: boolean;
}
export function HeldChart({ title, data, explained = false }: HeldChartProps) {
  const fingerprint = JSON.stringify(data);
  const draw = useMemo(() => (palette: Palette) => heldFigure(data, palette), [fingerprint]);
  return (
    <Figure title={title} aloud={heldAloud(data)} table={heldTable(data)} draw={draw} tall>
      {!explained && (
        <p class="note">
          Discs: counted. Bars: the range given about a week before, thick for half of the possible seasons,
          thin for 8 of 10, the line for 19 of 20. No bar: nothing was said then.
        </p>
      )}
    </Figure>
  );
}
