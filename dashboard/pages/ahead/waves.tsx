/** Waves of adults: when the young of today become adults, each with its range. */
import type { DateRange, PestForecast } from '../../../services/model/index.ts';
import { type DateAxis, RangeBar } from '../../parts/rangeBar.tsx';
import { Section } from '../../parts/section.tsx';
import { dayAndMonth, expectedWords, localDay } from '../../words/dates.ts';
import { capital, pestNames } from '../../words/names.ts';

const dayMs = 86_400_000;

/** The clock and the season of the place, as dates are told in. */
export interface Calendar {
  timeZone: string;
  /** The day it ends next. */
  seasonEnd: string;
}

/** 8 of 10 in words. */
export const eightOfTen = (range: DateRange, { timeZone, seasonEnd }: Calendar): string =>
  expectedWords(
    localDay(Date.parse(range.q10), timeZone),
    localDay(Date.parse(range.q90), timeZone),
    seasonEnd,
  );

/** Counted from today: the ledger counts generations from the first catch. */
const waveName = (index: number): string => (index === 0 ? 'next wave' : `wave ${index + 1}`);

interface WavesProps {
  pests: readonly PestForecast[];
  asOfMs: number;
  calendar: Calendar;
}
export function Waves({ pests, asOfMs, calendar }: WavesProps) {
  const rows = pests.flatMap((pest) =>
    pest.waves.map((wave, index) => ({ pest: pest.pest, unit: pest.counted.unit, index, ...wave })),
  );
  if (rows.length === 0) return null;
  const last = Math.max(...rows.map((row) => Date.parse(row.adults.q975)));
  const axis: DateAxis = { fromMs: asOfMs - 3 * dayMs, toMs: last + 3 * dayMs };
  const day = (ms: number) => dayAndMonth(localDay(ms, calendar.timeZone));
  return (
    <Section title="Waves of adults">
      <ol class="waves">
        {rows.map((row) => (
          <li key={`${row.pest} ${row.index}`}>
            <span class="wave-name">
              <strong>{capital(pestNames[row.pest])}</strong>, {waveName(row.index)}
            </span>
            <RangeBar range={row.adults} axis={axis} pest todayMs={asOfMs} />
            <span class="wave-words">
              adults {row.unit === 'trap-week' ? 'fly' : 'come'} {eightOfTen(row.adults, calendar)}
            </span>
          </li>
        ))}
      </ol>
      <div class="wave-axis">
        <span>{day(axis.fromMs)}</span>
        <span>{day(axis.toMs)}</span>
      </div>
      <p class="note">
        Each range shows possible dates: thick holds half of them, thin 8 of 10, the line 19 of 20. Dotted:
        today.
      </p>
    </Section>
  );
}
