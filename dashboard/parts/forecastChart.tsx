/** The figure of counts and forecast with its key. */
import { useMemo } from 'preact/hooks';
import type { ForecastFigureData } from '../figures/forecastData.ts';
import { forecastFigure } from '../figures/forecastFigure.ts';
import { offScale } from '../figures/forecastMarks.ts';
import { forecastAloud, forecastTable } from '../figures/forecastWords.ts';
import type { Palette } from '../figures/palette.ts';
import { Figure } from './figure.tsx';

interface ForecastChartProps {
  title: string;
  data: ForecastFigureData;
  /** Read once on a page: further charts leave out how bars are read. */
  explained?: boolean;
}
export function ForecastChart({ title, data, explained = false }: ForecastChartProps) {
  const fingerprint = JSON.stringify(data);
  const draw = useMemo(() => (palette: Palette) => forecastFigure(data, palette), [fingerprint]);
  return (
    <Figure title={title} aloud={forecastAloud(data)} table={forecastTable(data)} draw={draw} tall>
      <p class="figure-key">
        <span class="key-entry">
          <span class="swatch filled" aria-hidden="true" /> leave it
        </span>
        {data.plan && (
          <span class="key-entry">
            <span class="swatch hollow" aria-hidden="true" /> {data.plan.words}
          </span>
        )}
      </p>
      <p class="note">
        {!explained && 'Thick bar: half of the possible seasons. Thin bar: 8 of 10. Line: 19 of 20.'}
        {data.history.weeks.some((week) => week.part) && ' Half-filled: part of a trap was counted.'}
        {offScale(data).length > 0 &&
          ' Triangle: the range goes on above, to the figure beside it or to a full trap.'}
        {!explained &&
          data.unit === 'trap-week' &&
          ' Counted: all traps of that day together, for one whole trap in seven days.'}
        {data.history.gaps.length > 0 && ' Two strokes on the axis: that week was not counted.'}
      </p>
    </Figure>
  );
}
