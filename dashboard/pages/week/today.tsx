/** Today in almanac lines; the last one is what the tool does not know. */
import type { Sensor } from '../../../services/model/index.ts';
import type { Outcome, Recorded } from '../../api.ts';
import { latestReading } from '../../believed.ts';
import { type Counts, type CountWeek, historyOf } from '../../figures/countWeeks.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { Section } from '../../parts/section.tsx';
import { useLatestReadings } from '../../readings.ts';
import { nowMs, placePath, resource } from '../../state.ts';
import { ageWords, dayAndMonth, dayWords, localDay } from '../../words/dates.ts';
import { degrees, insects } from '../../words/numbers.ts';
import { perUnit } from '../../words/pests.ts';
import { pestInFocus } from './forecastData.ts';

/** The latest believed reading of any sensor. */
export function InsideNow() {
  const sensors = resource<{ records: Recorded<Sensor>[] }>(placePath('sensors')).value.data?.records ?? [];
  const latest = latestReading(useLatestReadings());
  if (!latest)
    return <Line name="Inside" value="no reading now" note="Add a sensor, or type in lowest and highest." />;
  const name = sensors.find((each) => each.id === latest.sensorId)?.data.name ?? latest.sensorId;
  const age = ageWords(nowMs.value - Date.parse(latest.time));
  return <Line name="Inside now" value={degrees(latest.temperatureC)} note={`read ${age}, ${name}`} />;
}

function NightsLine({ outcome }: { outcome: Outcome }) {
  const nights = outcome.forecast.temperature.days.slice(-7);
  if (nights.length === 0) return null;
  const lowest = Math.min(...nights.map((each) => each.minC));
  const filled = Math.round(nights.reduce((sum, each) => sum + each.filledHours, 0));
  const note = filled > 0 ? `${filled} hours of them filled in` : undefined;
  return <Line name={`Last ${nights.length} nights, lowest`} value={degrees(lowest)} note={note} />;
}

/** `from 87 on 2 traps, in part`, `from 30 on 1 trap, 14 days`; nothing where the number is that of one whole trap and a week. */
function reckonedFrom({ from, part }: CountWeek): string[] {
  if (!from) return [];
  const days = Math.round(from.days);
  if (from.traps === 1 && days === 7 && !part) return [];
  const traps = from.traps === 1 ? '1 trap' : `${from.traps} traps`;
  const how = [...(part ? ['in part'] : []), ...(days === 7 ? [] : [days === 1 ? '1 day' : `${days} days`])];
  return [[`from ${Math.round(from.insects)} on ${traps}`, ...how].join(', ')];
}

interface TodayProps {
  outcome: Outcome;
  counts: Counts;
  timeZone: string;
}
function LastCountLine({ outcome, counts, timeZone }: TodayProps) {
  const pest = pestInFocus(outcome);
  if (!pest) return null;
  const { weeks } = historyOf(counts, pest.counted);
  const [before, last] = [weeks.at(-2), weeks.at(-1)];
  if (!last)
    return <Line name="Last count" value="none yet" note="One count narrows the forecast at once." />;
  const day = dayAndMonth(localDay(last.endMs, timeZone));
  const note = [
    ...reckonedFrom(last),
    ...(before ? [`${insects(before.middle)} at the count before`] : []),
  ].join('; ');
  return (
    <Line
      name={`Last count, ${day}`}
      value={`${insects(last.middle)} ${perUnit[pest.counted.unit]}`}
      note={note}
    />
  );
}

export function Today(props: TodayProps) {
  const { advice } = props.outcome;
  const doubts = advice.doubts.map((each) => each.text);
  const things = doubts.length === 1 ? '1 thing' : `${doubts.length} things`;
  return (
    <Section title="Today">
      <Almanac>
        <InsideNow />
        <NightsLine outcome={props.outcome} />
        <LastCountLine {...props} />
        <Line name="Next count" value={dayWords(advice.nextCountOn)} />
        <Line
          name="What we do not know"
          value={doubts.length === 0 ? 'nothing to tell' : things}
          note={doubts.join(' ')}
        />
      </Almanac>
    </Section>
  );
}
