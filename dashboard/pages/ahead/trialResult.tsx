/** What a try changes: in a sentence, as a table beside leaving it and the advice, as a figure. */
import { useState } from 'preact/hooks';
import type { Candidate, ReleasePlan, Trial, Tried, Way } from '../../../services/model/index.ts';
import type { Outcome } from '../../api.ts';
import { enterAndTell } from '../../entries.ts';
import type { ForecastFigureData } from '../../figures/forecastData.ts';
import { tellRefused } from '../../notices.ts';
import { ForecastChart } from '../../parts/forecastChart.tsx';
import { OwnerOnly, ownerEnters } from '../../parts/ownerOnly.tsx';
import { Roof } from '../../parts/roof.tsx';
import { Table } from '../../parts/table.tsx';
import { wide } from '../../parts/wide.ts';
import { currency, nowMs, zone } from '../../state.ts';
import type { Start } from '../../whatIf/messages.ts';
import { chanceCounts, chanceWord } from '../../words/chances.ts';
import { dayAndMonth, dayWords, instantOf, localDay } from '../../words/dates.ts';
import { animals, pestNames } from '../../words/names.ts';
import { money, unbroken } from '../../words/numbers.ts';
import { apartWords, planned, wayOf, wayOnDay, weeksOver } from '../../words/ways.ts';
import { forecastData, useCounts } from '../week/forecastData.ts';

const chance = (probability: number) => `${chanceWord(probability)} (${chanceCounts(probability)})`;

/** `Left, whitefly over your limit: probably (8 of 10). With 240 Encarsia on Thu 28 May: ...` */
export function differenceWords(left: number, trial: Trial, tried: Tried): string {
  const what = `${animals(trial.number, trial.enemy)} on ${dayWords(trial.day)}`;
  const before = `Left, ${pestNames[trial.pest]} over your limit: ${chance(left)}.`;
  const after = `With ${what}: ${chance(tried.candidate.passesLimit)}.`;
  return `${before} ${after}`;
}

/** Why it cannot be had by that day, or by when to order it. */
function deliveryWords({ orderBy, arrivesOn, windowFrom }: ReleasePlan): string {
  if (orderBy === undefined || arrivesOn === undefined)
    return `No parcel can come by ${dayWords(windowFrom)} any more: only with friends you have.`;
  return `Order by ${dayWords(orderBy)}; it comes ${dayWords(arrivesOn)}.`;
}

function Comparison({
  rows,
}: {
  rows: {
    words: string;
    candidate: Pick<Candidate, 'passesLimit' | 'weeks' | 'price'>;
    way: Way | undefined;
  }[];
}) {
  const { cells, note } = weeksOver(rows.map(({ candidate, way }) => ({ weeks: candidate.weeks, way })));
  return (
    <>
      <Table
        caption="What if: chance to pass your limit, weeks over it, price"
        head={['Way', 'Passes limit', 'Weeks over', 'Price']}
        rows={rows.map(({ words, candidate }, row) => [
          words,
          unbroken(chanceCounts(candidate.passesLimit)),
          unbroken(cells[row] ?? ''),
          candidate.price === undefined ? 'not typed in' : money(candidate.price, currency.value),
        ])}
        strong={(row) => row === rows.length - 1}
      />
      <p class="note">{note}</p>
    </>
  );
}

/** Whether it was kept. */
async function noteOrder({ candidate }: Tried): Promise<boolean> {
  const { enemy, number, arrivesOn, price } = candidate.plan;
  const words = `${animals(number, enemy)} ordered`;
  const data = {
    enemy,
    number,
    orderedAt: new Date(nowMs.value).toISOString(),
    ...(arrivesOn && { expectedOn: arrivesOn }),
    ...(price !== undefined && { price }),
  };
  const answer = await enterAndTell('orders', data, words);
  if (!answer.ok) tellRefused(answer.refused, `${words}.`);
  return answer.ok;
}

interface TrialResultProps {
  outcome: Outcome;
  starts: readonly Start[];
  trial: Trial;
  tried: Tried;
}
export function TrialResult({ outcome, starts, trial, tried }: TrialResultProps) {
  const counts = useCounts();
  const [ordered, setOrdered] = useState<Tried | undefined>(undefined);
  const start = starts.find(({ pest }) => pest === trial.pest);
  const timeZone = zone.value;
  if (!start) return null;
  const { left } = start;
  const leaveIt = { passesLimit: left.passesLimit.probability, weeks: left.weeks, price: 0 };
  const advised = outcome.advice.pest === trial.pest ? planned(outcome.advice) : undefined;
  // Of a parcel that the advice weighed itself its own numbers, which are of more possible seasons.
  const triedWay = (advised && wayOnDay(outcome.advice, tried.candidate.plan)) ?? tried.way;
  const apart = apartWords(
    { ...leaveIt, way: start.leftWay },
    { ...tried.candidate, way: triedWay },
    { how: 'as tried', currency: currency.value, timeZone },
  );
  const { plan } = tried.candidate;
  const today = localDay(nowMs.value, timeZone);
  const words = `with ${animals(plan.number, plan.enemy)}`;
  const data: ForecastFigureData = {
    ...forecastData({ outcome, pest: left, counts, timeZone, wide: wide.value, withPlan: false }),
    plan: {
      words,
      weeks: tried.candidate.weeks,
      label: {
        ms: instantOf(plan.windowFrom, 12, timeZone),
        text: `release, ${dayAndMonth(plan.windowFrom)}`,
      },
    },
  };
  const inTheWay = tried.conditions.filter(({ verdict }) => verdict === 'fails');
  return (
    <div class="what-if-result">
      <p role="status">
        <strong>{unbroken(differenceWords(left.passesLimit.probability, trial, tried))}</strong>{' '}
        {unbroken(apart)} {unbroken(plan.windowFrom < today ? 'That day is past.' : deliveryWords(plan))}
      </p>
      <div class="what-if-roofs">
        <div>
          <p class="note">If left</p>
          <Roof chance={left.passesLimit.probability} />
        </div>
        <div>
          <p class="note">As tried</p>
          <Roof chance={tried.candidate.passesLimit} />
        </div>
      </div>
      <Comparison
        rows={[
          { words: 'Leave it', candidate: leaveIt, way: start.leftWay },
          ...(advised?.plan
            ? [
                {
                  words: `Advised: ${advised.washFirst ? 'wash, then ' : ''}${dayWords(advised.plan.windowFrom)}, ${advised.plan.number}`,
                  candidate: advised,
                  way: wayOf(outcome.advice, advised),
                },
              ]
            : []),
          {
            words: `Tried: ${dayWords(plan.windowFrom)}, ${plan.number}`,
            candidate: tried.candidate,
            way: triedWay,
          },
        ]}
      />
      {inTheWay.length > 0 && (
        <ul class="ruled">
          {inTheWay.map(({ rule, text }) => (
            <li key={rule}>{unbroken(text)}</li>
          ))}
        </ul>
      )}
      <ForecastChart title={`What if: ${pestNames[trial.pest]}, ${words}`} data={data} explained />
      {plan.orderBy && plan.windowFrom >= today && (
        <OwnerOnly line={ownerEnters}>
          {ordered === tried ? (
            <p class="note" role="status">
              Entered as ordered: it stands among the <a href="/releases">orders</a>.
            </p>
          ) : (
            <button
              type="button"
              class="key wide-key"
              onClick={() => void noteOrder(tried).then((isKept) => isKept && setOrdered(tried))}
            >
              I have ordered these
            </button>
          )}
        </OwnerOnly>
      )}
    </div>
  );
}
