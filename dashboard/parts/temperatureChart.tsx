/** The figure of temperature with its gaps, from the curve as the forecast uses it. */
import { useMemo } from 'preact/hooks';
import type { TemperatureAnswer } from '../api.ts';
import type { Palette } from '../figures/palette.ts';
import { type TemperatureFigureData, temperatureFigure } from '../figures/temperatureFigure.ts';
import { temperatureAloud, temperatureTable } from '../figures/temperatureWords.ts';
import { windowOf } from '../readings.ts';
import { placePath, resource, zone } from '../state.ts';
import { Figure } from './figure.tsx';

function useAnswer(days: number) {
  const { fromMs, toMs, query } = windowOf(days * 24);
  const path = placePath(`temperature?${query}`);
  const answer = resource<TemperatureAnswer>(path, placePath(`temperature ${days}`)).value.data;
  return { fromMs, toMs, answer };
}

/** What was not believed in the last days, on arrival or when the curve was drawn. */
export const useDoubted = (days: number): TemperatureAnswer['doubted'] =>
  useAnswer(days).answer?.doubted ?? [];

/** The curve of the last days; undefined while it loads. */
export function useTemperature(days: number): TemperatureFigureData | undefined {
  const { fromMs, toMs, answer } = useAnswer(days);
  if (!answer) return undefined;
  return {
    timeZone: zone.value,
    fromMs,
    toMs,
    points: answer.points.map(({ time, temperatureC, filledBy }) => ({
      timeMs: Date.parse(time),
      temperatureC,
      filled: filledBy !== undefined,
    })),
    doubted: answer.doubted.map(({ time, temperatureC }) => ({ timeMs: Date.parse(time), temperatureC })),
  };
}

export function TemperatureChart({ data }: { data: TemperatureFigureData }) {
  const fingerprint = JSON.stringify(data);
  const draw = useMemo(() => (palette: Palette) => temperatureFigure(data, palette), [fingerprint]);
  if (data.points.length === 0) return <p class="note">No temperature in these days yet.</p>;
  return (
    <Figure
      title="Temperature inside"
      aloud={temperatureAloud(data)}
      table={temperatureTable(data)}
      draw={draw}
    >
      <p class="note">
        {data.points.some((point) => point.filled) &&
          'Dotted, in a ruled band: nothing was read here, so it is an estimate. '}
        {data.doubted.length > 0 &&
          'Crosses and triangles: readings that look wrong (“not believed”), kept but not used.'}
      </p>
    </Figure>
  );
}
