/** The forecast figure read aloud and as a table: the same numbers without the drawing. */
import { dayAndMonth, localDay } from '../words/dates.ts';
import { insectRange, insects } from '../words/numbers.ts';
import { perUnit } from '../words/pests.ts';
import { ahead, type ForecastFigureData, weekMs } from './forecastData.ts';
import type { FigureTable } from './palette.ts';

/** From the count two weeks before the last to the last. */
function countedAloud({ history, unit }: ForecastFigureData): string {
  const counts = history.weeks;
  const each = perUnit[unit];
  const [first, last] = [counts.at(-3) ?? counts[0], counts.at(-1)];
  if (!first || !last) return 'Not counted yet.';
  if (first === last) return `${insects(last.middle)} ${each} at the one count.`;
  const span = weeksBetween(first.endMs, last.endMs);
  if (counts.slice(-3).every((week) => week.high === 0))
    return `${unit === 'trap-week' ? 'None caught' : 'None seen'} in ${span}.`;
  return `From ${insects(first.middle)} to ${insects(last.middle)} ${each} in ${span}.`;
}

/** The same numbers in one breath. */
export function forecastAloud(data: ForecastFigureData): string {
  const counted = countedAloud(data);
  const week = ahead(data, data.leave)[2] ?? data.leave.at(-1);
  if (!week) return counted;
  const on = dayAndMonth(localDay(Date.parse(week.end), data.timeZone));
  const { q25, q50, q75 } = week.count;
  const left = `If left, about ${insects(q50)} on ${on}, half of the time ${insectRange(q25, q75)}.`;
  const planned = data.plan?.weeks.find((each) => each.end === week.end);
  const plan = planned ? ` ${data.plan?.words}, about ${insects(planned.count.q50)}.` : '';
  return `${counted} ${left}${plan.replace(/^ ./, (start) => start.toUpperCase())}`;
}

function weeksBetween(fromMs: number, toMs: number): string {
  const weeks = Math.max(1, Math.round((toMs - fromMs) / weekMs));
  return weeks === 1 ? 'one week' : `${weeks} weeks`;
}

export function forecastTable(data: ForecastFigureData): FigureTable {
  const day = (ms: number) => dayAndMonth(localDay(ms, data.timeZone));
  const planHead = data.plan ? [data.plan.words] : [];
  const counted = data.history.weeks.map((week) => [
    day(week.endMs),
    insects(week.middle),
    ...Array<string>(data.plan ? 5 : 4).fill(''),
  ]);
  const forecast = data.leave.map((week) => {
    const c = week.count;
    const planned = data.plan?.weeks.find((each) => each.end === week.end);
    const row = [
      day(Date.parse(week.end)),
      '',
      insects(c.q50),
      insectRange(c.q25, c.q75),
      insectRange(c.q10, c.q90),
      insectRange(c.q025, c.q975),
    ];
    return data.plan ? [...row, planned ? insects(planned.count.q50) : ''] : row;
  });
  return {
    head: ['Week to', 'Counted', 'Left, middle', 'Half', '8 of 10', '19 of 20', ...planHead],
    rows: [...counted, ...forecast],
  };
}
