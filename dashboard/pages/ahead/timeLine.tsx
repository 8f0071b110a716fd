/** Generations of pests and friends on one time line; every lane has its words, and all of them a table. */
import { type Calendar, type Lane, lanesAloud, lanesTable, spanOf } from '../../figures/lanes.ts';
import { type DateAxis, RangeBar } from '../../parts/rangeBar.tsx';
import { SaveCsv } from '../../parts/saveCsv.tsx';
import { Section } from '../../parts/section.tsx';
import { Table } from '../../parts/table.tsx';
import { dayAndMonth, instantOf, localDay } from '../../words/dates.ts';
import '../../styles/lanes.css';
import { unbroken } from '../../words/numbers.ts';

const textures = ['lane-dots', 'lane-strokes', 'lane-cross', 'lane-full'] as const;

/** Egg dots, young strokes, old cross-hatch, oldest full: told apart without colour. */
const Textures = () => (
  <svg width="0" height="0" aria-hidden="true" class="lane-textures">
    <defs>
      <pattern id="lane-dots" width="6" height="6" patternUnits="userSpaceOnUse">
        <circle cx="2" cy="2" r="1.1" />
      </pattern>
      <pattern id="lane-strokes" width="7" height="7" patternUnits="userSpaceOnUse">
        <path d="M0 7L7 0" />
      </pattern>
      <pattern id="lane-cross" width="6" height="6" patternUnits="userSpaceOnUse">
        <path d="M0 6L6 0M0 0L6 6" />
      </pattern>
      <pattern id="lane-full" width="4" height="4" patternUnits="userSpaceOnUse">
        <path d="M0 1H4M0 3H4" />
      </pattern>
    </defs>
  </svg>
);

const textureOf = (index: number, of: number): string =>
  textures[
    Math.min(textures.length - 1, Math.round((index * (textures.length - 1)) / Math.max(1, of - 1)))
  ] ?? textures[0];

function LaneBar({ lane, axis, todayMs }: { lane: Lane; axis: DateAxis; todayMs: number }) {
  const share = (ms: number) =>
    Math.max(0, Math.min(100, (100 * (ms - axis.fromMs)) / (axis.toMs - axis.fromMs)));
  const shown = lane.stages.filter(({ toMs }) => toMs > axis.fromMs);
  return (
    <span class={lane.pest ? 'lane-bar pest' : 'lane-bar friend'}>
      {shown.length > 0 && (
        <svg class="lane-stages" aria-hidden="true">
          {shown.map(({ name, fromMs, toMs }) => (
            <rect
              key={name}
              x={`${share(fromMs)}%`}
              width={`${share(toMs) - share(fromMs)}%`}
              y="6"
              height="14"
              fill={`url(#${textureOf(
                lane.stages.findIndex((each) => each.name === name),
                lane.stages.length,
              )})`}
            />
          ))}
        </svg>
      )}
      {lane.range && <RangeBar range={lane.range} axis={axis} pest={lane.pest} todayMs={todayMs} />}
      {lane.window && (
        <svg class="range-bar friend" aria-hidden="true">
          <line class="range-today" x1={`${share(todayMs)}%`} x2={`${share(todayMs)}%`} y1="0" y2="26" />
          {[lane.window.fromMs, lane.window.toMs].map((ms) => (
            <line key={ms} class="range-middle" x1={`${share(ms)}%`} x2={`${share(ms)}%`} y1="5" y2="21" />
          ))}
          <line
            class="range-middle"
            x1={`${share(lane.window.fromMs)}%`}
            x2={`${share(lane.window.toMs)}%`}
            y1="13"
            y2="13"
          />
        </svg>
      )}
    </span>
  );
}

/** The first of each month in view, and today. */
function Months({ axis, timeZone }: { axis: DateAxis; timeZone: string }) {
  const marks: { day: string; ms: number }[] = [];
  let month = `${localDay(axis.fromMs, timeZone).slice(0, 7)}-01`;
  for (let ms = instantOf(month, 0, timeZone); ms < axis.toMs; ms = instantOf(month, 0, timeZone)) {
    if (ms > axis.fromMs) marks.push({ day: month, ms });
    month = `${localDay(ms + 40 * 86_400_000, timeZone).slice(0, 7)}-01`;
  }
  const share = (ms: number) => (100 * (ms - axis.fromMs)) / (axis.toMs - axis.fromMs);
  return (
    <span class="lane-months" aria-hidden="true">
      {marks
        .filter(({ ms }) => share(ms) < 84)
        .map(({ day, ms }) => (
          <span key={day} style={{ left: `${share(ms)}%` }}>
            {dayAndMonth(day)}
          </span>
        ))}
    </span>
  );
}

/** Why two lanes of one pest name different days. */
const twoReckonings = (lanes: readonly Lane[]): string =>
  lanes.some(({ pest, stages }) => pest && stages.length > 0)
    ? 'By degree-days follows those that began with the first catch; by counts follows all young there today, of every age: so their days differ.'
    : '';

interface TimeLineProps {
  lanes: readonly Lane[];
  asOfMs: number;
  calendar: Calendar;
}
export function TimeLine({ lanes, asOfMs, calendar }: TimeLineProps) {
  if (lanes.length === 0) return null;
  const axis = spanOf(lanes, asOfMs);
  const title = 'Who is where';
  const table = lanesTable(lanes, calendar);
  return (
    <Section title={title}>
      <Textures />
      <div class="lanes" role="img" aria-label={`${title}. ${lanesAloud(lanes)}`}>
        <div class="lane lane-head">
          <span class="lane-name" />
          <Months axis={axis} timeZone={calendar.timeZone} />
        </div>
        {lanes.map((lane) => (
          <div class="lane" key={lane.key}>
            <span class="lane-name">
              <strong>{lane.name}</strong>, {lane.second}
            </span>
            <LaneBar lane={lane} axis={axis} todayMs={asOfMs} />
            <span class="lane-words">{unbroken(lane.words)}</span>
          </div>
        ))}
      </div>
      <p class="note">
        Hatched: stages by their middle dates, from eggs (dots) to the oldest (ruled). Ranges show possible
        dates: thick holds half of them, thin 8 of 10, the line 19 of 20. Bracket: days to set friends out.
        Dotted: today. {unbroken(twoReckonings(lanes))}
      </p>
      <details>
        <summary>Read it as a table</summary>
        <Table {...table} caption={title} />
        <SaveCsv title={title} table={table} />
      </details>
    </Section>
  );
}
