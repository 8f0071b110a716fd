/** The temperature figure read aloud and as a table, one row a day. */
import { dayWords, localDay, spanWords } from '../words/dates.ts';
import { degreeSign, ownDegrees } from '../words/habits.ts';
import type { FigureTable } from './palette.ts';
import type { TemperatureFigureData } from './temperatureFigure.ts';

/** Length of the stretches that were filled in. */
function filledMs(data: TemperatureFigureData, day?: string): number {
  return data.points.reduce((sum, point, index) => {
    const before = data.points[index - 1];
    if (!before || !(point.filled || before.filled)) return sum;
    if (day && localDay(before.timeMs, data.timeZone) !== day) return sum;
    return sum + point.timeMs - before.timeMs;
  }, 0);
}

export function temperatureAloud(data: TemperatureFigureData): string {
  const values = data.points.map((point) => point.temperatureC);
  if (values.length === 0) return 'No temperature yet.';
  const [low, high] = [Math.min(...values), Math.max(...values)].map((c) => Math.round(ownDegrees(c)));
  const filled = filledMs(data);
  const doubted = data.doubted.length;
  const since = dayWords(localDay(data.fromMs, data.timeZone));
  return [
    `${low === high ? low : `${low} to ${high}`} ${degreeSign()} since ${since}.`,
    filled > 0 ? `${spanWords(filled)} filled in.` : 'Nothing filled in.',
    doubted > 0 ? `${doubted} ${doubted === 1 ? 'reading' : 'readings'} not believed.` : '',
  ]
    .join(' ')
    .trim();
}

export function temperatureTable(data: TemperatureFigureData): FigureTable {
  const byDay = new Map<string, number[]>();
  for (const point of data.points) {
    const day = localDay(point.timeMs, data.timeZone);
    byDay.set(day, [...(byDay.get(day) ?? []), point.temperatureC]);
  }
  const rows = [...byDay].map(([day, values]) => [
    dayWords(day),
    ownDegrees(Math.min(...values)).toFixed(1),
    ownDegrees(Math.max(...values)).toFixed(1),
    (filledMs(data, day) / 3_600_000).toFixed(0),
    String(data.doubted.filter((each) => localDay(each.timeMs, data.timeZone) === day).length),
  ]);
  return {
    head: ['Day', `Lowest ${degreeSign()}`, `Highest ${degreeSign()}`, 'Hours filled', 'Not believed'],
    rows,
  };
}
