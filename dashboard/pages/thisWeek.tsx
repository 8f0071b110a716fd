/** This week: one sentence, and below it its evidence in the order a doubter would ask. */
import type { PestForecast, TrapCount } from '../../services/model/index.ts';
import type { Outcome, Recorded } from '../api.ts';
import { working } from '../live.ts';
import { ForecastChart } from '../parts/forecastChart.tsx';
import { Roof } from '../parts/roof.tsx';
import { Section } from '../parts/section.tsx';
import { Sentence } from '../parts/sentence.tsx';
import { Shell } from '../parts/shell.tsx';
import { wide } from '../parts/wide.ts';
import { place, placePath, resource } from '../state.ts';
import { paneNumber, paneWords } from '../words/chances.ts';
import { dayAndMonth } from '../words/dates.ts';
import { capital, enemyWords, pestNames } from '../words/names.ts';
import { unbroken } from '../words/numbers.ts';
import { forecastData, pestInFocus } from './week/forecastData.ts';
import { NextStep } from './week/nextStep.tsx';
import { Cautions, Conditions, DaysToKeep, OtherWays, Why, WouldChange } from './week/sections.tsx';
import { InsideNow, Today } from './week/today.tsx';

function RoofCaption({ outcome: { advice } }: { outcome: Outcome }) {
  const chance = advice.chanceIfLeft;
  if (chance === undefined) {
    return (
      <>
        <strong>Dotted panes:</strong> too little is known to say how likely anything is.
      </>
    );
  }
  const pest = advice.pest ? pestNames[advice.pest] : 'the pest';
  const by = advice.passesLimitBy ? ` by ${dayAndMonth(advice.passesLimitBy)}` : '';
  const withPlan =
    advice.chanceWithPlan !== undefined && advice.plan
      ? `; ${paneNumber(advice.chanceWithPlan)} with ${enemyWords[advice.plan.enemy].name}`
      : '';
  return (
    <>
      <strong>{paneWords(chance)}:</strong> {unbroken(`${pest} over your limit${by} if left${withPlan}.`)}
    </>
  );
}

interface EvidenceProps {
  outcome: Outcome;
  pest: PestForecast;
  counts: readonly Recorded<TrapCount>[];
  timeZone: string;
}
function Chart({ outcome, pest, counts, timeZone }: EvidenceProps) {
  const title = `${capital(pestNames[pest.pest])} on a trap in a week`;
  const data = forecastData({ outcome, pest, counts, timeZone, wide: wide.value, withPlan: true });
  return (
    <Section title={title}>
      <ForecastChart title={title} data={data} />
    </Section>
  );
}

function Week({ outcome, timeZone }: { outcome: Outcome; timeZone: string }) {
  const { advice } = outcome;
  const counts =
    resource<{ records: Recorded<TrapCount>[] }>(placePath('trap-counts')).value.data?.records ?? [];
  const pest = pestInFocus(outcome);
  return (
    <div class="week">
      <div class="week-centre">
        <div class="week-top">
          <Sentence sentence={advice.sentence} verb={advice.verb} waiting={working.value} />
          <Roof chance={advice.chanceIfLeft} />
          <p class="roof-caption">
            <RoofCaption outcome={outcome} />
          </p>
          <NextStep advice={advice} />
        </div>
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
      </div>
      <div class="week-side">
        <DaysToKeep advice={advice} />
        <Today outcome={outcome} counts={counts} timeZone={timeZone} />
        <div class="week-last">
          <OtherWays advice={advice} currency={place.value?.supplier?.currency ?? advice.plan?.currency} />
          <Cautions advice={advice} />
        </div>
      </div>
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
  const outcome = resource<Outcome>(placePath('outcome')).value;
  return (
    <Shell>
      {outcome.data && <Week outcome={outcome.data} timeZone={place.value?.timeZone ?? 'UTC'} />}
      {!outcome.data && outcome.refused && <Nothing />}
      {!outcome.data && !outcome.refused && <p class="note">Fetching the week.</p>}
    </Shell>
  );
}
