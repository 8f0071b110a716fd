/** This week: one sentence, and below it its evidence in the order a doubter would ask. */
import { useEffect, useState } from 'preact/hooks';
import type { Advice, PestForecast } from '../../services/model/index.ts';
import type { Outcome } from '../api.ts';
import { type Counts, historyOf, isFound } from '../figures/countWeeks.ts';
import { working } from '../live.ts';
import { ForecastChart } from '../parts/forecastChart.tsx';
import { Roof } from '../parts/roof.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Sentence } from '../parts/sentence.tsx';
import { Shell } from '../parts/shell.tsx';
import { wide } from '../parts/wide.ts';
import { currency, nowMs, placePath, resource, zone } from '../state.ts';
import { dayWords, localDay } from '../words/dates.ts';
import { capital, pestNames } from '../words/names.ts';
import { unbroken } from '../words/numbers.ts';
import { figureTitle } from '../words/pests.ts';
import { planned } from '../words/ways.ts';
import { otherPestWords, planApart, roofCaption } from './week/captions.ts';
import { forecastData, pestInFocus, useCounts } from './week/forecastData.ts';
import { NextStep } from './week/nextStep.tsx';
import { Cautions, Conditions, DaysToKeep, OtherWays, Why, WouldChange } from './week/sections.tsx';
import { Tally } from './week/tally.tsx';
import { InsideNow, Today } from './week/today.tsx';
import { Warnings } from './week/warnings.tsx';

function RoofCaption({ outcome, counts, timeZone }: EvidenceProps) {
  const { advice } = outcome;
  const pest = pestInFocus(outcome);
  const last = pest && historyOf(counts, pest.counted).weeks.at(-1);
  const { lead, text } = roofCaption(
    advice,
    pest && last && last.middle > pest.counted.limit ? 'over' : 'within',
  );
  const apart = planApart(advice, planned(advice), { currency: currency.value, timeZone });
  return (
    <div class="roof-caption">
      <p>
        <strong>{unbroken(lead)}</strong> {unbroken(text)}
      </p>
      {apart !== '' && <p>{unbroken(apart)}</p>}
    </div>
  );
}

interface EvidenceProps {
  outcome: Outcome;
  counts: Counts;
  timeZone: string;
}

/** The pests that the sentence is not about, so that none is out of sight. */
function OtherPests({ outcome, counts }: Omit<EvidenceProps, 'timeZone'>) {
  const focus = pestInFocus(outcome);
  const others = outcome.forecast.pests.filter((each) => each !== focus);
  if (others.length === 0) return null;
  return (
    <ul class="other-pests">
      {others.map((pest) => (
        <li key={pest.pest}>
          <a href="/ahead">{capital(pestNames[pest.pest])}</a>:{' '}
          {unbroken(
            otherPestWords(pest, historyOf(counts, pest.counted).weeks.at(-1), isFound(counts, pest)),
          )}
        </li>
      ))}
    </ul>
  );
}

function Chart({ outcome, pest, counts, timeZone }: EvidenceProps & { pest: PestForecast }) {
  const title = figureTitle(pest.pest, pest.counted.unit);
  const data = forecastData({ outcome, pest, counts, timeZone, wide: wide.value, withPlan: true });
  return (
    <Section title={title}>
      <ForecastChart title={title} data={data} />
    </Section>
  );
}

/** After midnight the "today" of a sentence is yesterday, until the morning's forecast. */
function SaidBefore({ advice, timeZone }: { advice: Advice; timeZone: string }) {
  const saidOn = localDay(Date.parse(advice.asOf), timeZone);
  if (!/\btoday\b/.test(advice.sentence) || saidOn === localDay(nowMs.value, timeZone)) return null;
  return <p class="note">{unbroken(`Said on ${dayWords(saidOn)}: “today” is that day.`)}</p>;
}

function Below({ outcome, counts, timeZone }: EvidenceProps) {
  const { advice } = outcome;
  const pest = pestInFocus(outcome);
  return (
    <>
      <div class="week-chart">
        {pest && <Chart outcome={outcome} pest={pest} counts={counts} timeZone={timeZone} />}
      </div>
      <div class="week-why">
        <Why advice={advice} />
        <WouldChange advice={advice} />
      </div>
      <div class="week-conditions">
        <Conditions advice={advice} />
      </div>
    </>
  );
}

function Beside({ outcome, counts, timeZone }: EvidenceProps) {
  const { advice } = outcome;
  return (
    <>
      <div class="week-side">
        <DaysToKeep advice={advice} />
        <Warnings advice={advice} />
        <Today outcome={outcome} counts={counts} timeZone={timeZone} />
        <div class="week-last">
          <OtherWays advice={advice} />
          <Cautions advice={advice} />
          <button type="button" class="key wide-key screen-only" onClick={() => print()}>
            Print the week and a tally sheet
          </button>
        </div>
      </div>
      <Tally />
    </>
  );
}

/** Whether the sentence was drawn before: then the page is drawn as a whole. */
let drawnBefore = false;

function Week({ outcome, timeZone }: { outcome: Outcome; timeZone: string }) {
  const { advice } = outcome;
  const counts = useCounts();
  const [whole, setWhole] = useState(drawnBefore);
  // An effect runs after the first picture: the chart costs a slow phone as long as all above it.
  useEffect(() => {
    drawnBefore = true;
    setWhole(true);
  }, []);
  const evidence = { outcome, counts, timeZone };
  return (
    <div class="week">
      <div class="week-centre">
        <div class="week-top">
          <Sentence sentence={advice.sentence} verb={advice.verb} waiting={working.value} />
          <SaidBefore advice={advice} timeZone={timeZone} />
          <Roof chance={advice.chanceIfLeft} />
          <RoofCaption {...evidence} />
          <NextStep advice={advice} />
          <OtherPests outcome={outcome} counts={counts} />
        </div>
        {whole && <Below {...evidence} />}
      </div>
      {whole && <Beside {...evidence} />}
    </div>
  );
}

/** Before the first forecast: dotted roof, what to do, no empty frames. */
function Nothing() {
  return (
    <div class="week">
      <div class="week-centre">
        <div class="week-top">
          <Sentence sentence="Count today: one count is where the forecast begins." verb="Count" />
          <Roof chance={undefined} />
          <p class="roof-caption">
            <strong>Dotted panes:</strong> too little to say.
          </p>
          <div class="next-step">
            <a class="main-button" href="/round">
              Count now
            </a>
          </div>
        </div>
      </div>
      <div class="week-side">
        <Section title="Today">
          <ul class="almanac">
            <InsideNow />
          </ul>
        </Section>
      </div>
    </div>
  );
}

export function ThisWeek() {
  const outcome = resource<Outcome | null>(placePath('outcome')).value;
  // Before the first forecast the answer is nothing, and no fault.
  const answered = outcome.refused !== undefined || outcome.data === null;
  return (
    <Shell>
      {outcome.data && <Week outcome={outcome.data} timeZone={zone.value} />}
      {!outcome.data && answered && <Nothing />}
      {!outcome.data && !answered && <PageHead sentence="This week" note="Fetching the week." />}
    </Shell>
  );
}
