/** What is coming: counts and forecast of each pest, waves, ledger, warmth. */
import type { Outcome } from '../api.ts';
import { type Counts, isFound } from '../figures/countWeeks.ts';
import { type Calendar, eightOfTen, lanesOf } from '../figures/lanes.ts';
import { ForecastChart } from '../parts/forecastChart.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { TemperatureChart, useTemperature } from '../parts/temperatureChart.tsx';
import { wide } from '../parts/wide.ts';
import { nowMs, place, placePath, resource, zone } from '../state.ts';
import { chanceCounts, chanceWord } from '../words/chances.ts';
import { dayAndMonth, localDay, nextSeasonEnd } from '../words/dates.ts';
import { capital, pestNames } from '../words/names.ts';
import { unbroken } from '../words/numbers.ts';
import { figureTitle, perUnit } from '../words/pests.ts';
import { Ledger } from './ahead/ledger.tsx';
import { TimeLine } from './ahead/timeLine.tsx';
import { WhatIf } from './ahead/whatIf.tsx';
import { forecastData, pestInFocus, useCounts } from './week/forecastData.ts';

/** The page's sentence: the next wave of a pest that was found, else the chance. */
function aheadSentence(outcome: Outcome, calendar: Calendar, counts: Counts): string {
  const pest = pestInFocus(outcome);
  if (!pest) return 'Nothing is forecast yet: choose the pests you have had.';
  const name = capital(pestNames[pest.pest]);
  const wave = pest.waves[0];
  const come = pest.counted.unit === 'trap-week' ? 'fly' : 'come';
  if (wave && isFound(counts, pest))
    return `${name}: the next adults ${come} ${eightOfTen(wave.adults, calendar)}.`;
  return `${name}: over your limit ${chanceWord(pest.passesLimit.probability)} (${chanceCounts(pest.passesLimit.probability)}).`;
}

function Pests({ outcome, counts, timeZone }: { outcome: Outcome; counts: Counts; timeZone: string }) {
  return (
    <>
      {outcome.forecast.pests.map((pest, index) => {
        const { unit, limit } = pest.counted;
        const title = figureTitle(pest.pest, unit);
        const own = `${Math.round(limit)}${unit === 'ten-leaves' ? ` ${perUnit[unit]}` : ''}`;
        const data = forecastData({ outcome, pest, counts, timeZone, wide: wide.value, withPlan: true });
        const { probability, by } = pest.passesLimit;
        const until = dayAndMonth(localDay(Date.parse(by), timeZone));
        return (
          <Section key={pest.pest} title={title}>
            <p>
              {unbroken(
                `Over your limit of ${own} before ${until}: ` +
                  `${chanceWord(probability)} (${chanceCounts(probability)}) if left.` +
                  (isFound(counts, pest) ? '' : ' None found so far: this is only how seasons usually go.'),
              )}
            </p>
            <ForecastChart title={title} data={data} explained={index > 0} />
          </Section>
        );
      })}
    </>
  );
}

function Warmth() {
  const data = useTemperature(7);
  return (
    <Section title="Temperature with its gaps">
      {data ? <TemperatureChart data={data} /> : <p class="note">Fetching the temperature.</p>}
    </Section>
  );
}

export function Ahead() {
  const outcome = resource<Outcome>(placePath('outcome')).value.data;
  const counts = useCounts();
  const timeZone = zone.value;
  const asOf = localDay(outcome ? Date.parse(outcome.forecast.asOf) : nowMs.value, timeZone);
  const calendar = { timeZone, seasonEnd: nextSeasonEnd(place.value?.seasonEnd ?? '12-31', asOf) };
  return (
    <Shell>
      <PageHead
        sentence={outcome ? aheadSentence(outcome, calendar, counts) : 'Too little to say what is coming.'}
      />
      {outcome && (
        <>
          <Pests outcome={outcome} counts={counts} timeZone={timeZone} />
          <TimeLine
            lanes={lanesOf(outcome, calendar, (pest) => isFound(counts, pest))}
            asOfMs={Date.parse(outcome.forecast.asOf)}
            calendar={calendar}
          />
          <WhatIf outcome={outcome} />
          <Ledger entries={outcome.forecast.ledger} calendar={calendar} />
        </>
      )}
      <Warmth />
    </Shell>
  );
}
