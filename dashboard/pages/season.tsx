/** The season: what happened, what it cost, how good the forecasts were, also when they were bad. */
import type { HeldRound, PestForecast, Release, Treatment } from '../../services/model/index.ts';
import type { Outcome, Recorded } from '../api.ts';
import { historyOf } from '../figures/countWeeks.ts';
import { howGood, howGoodWords, roundsOver, type ToldRound, toldRounds } from '../figures/heldWords.ts';
import { Almanac, Line } from '../parts/almanac.tsx';
import { HeldChart } from '../parts/heldChart.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { Spent } from '../parts/spent.tsx';
import { nowMs, placePath, resource, zone } from '../state.ts';
import { addDays, dayAndMonth, localDay } from '../words/dates.ts';
import { capital, pestNames } from '../words/names.ts';
import { insects, unbroken } from '../words/numbers.ts';
import { figureTitle, perUnit } from '../words/pests.ts';
import { BesideEarlier } from './season/beside.tsx';
import { NextYear, WhatFriendsHeld } from './season/friends.tsx';
import type { ShoppingAnswer } from './shopping.tsx';
import { useCounts } from './week/forecastData.ts';

export interface HeldAnswer {
  seasonEnd: string;
  rounds: HeldRound[];
}
const many = (n: number, one: string, more = `${one}s`) => `${n} ${n === 1 ? one : more}`;

const ofPest = <R extends HeldRound>(rounds: readonly R[], pest: string) =>
  rounds.filter((each) => each.pest === pest);

/** `Whitefly passed your limit in 3 of 12 rounds`; the pest that did most often speaks. */
export function seasonSentence(rounds: readonly ToldRound[], pests: readonly PestForecast[]): string {
  if (rounds.length === 0) return 'Nothing is counted this season yet.';
  const [worst] = pests
    .map(({ pest, counted }) => {
      const own = ofPest(rounds, pest);
      return { pest, own, over: roundsOver(own, counted.limit) };
    })
    .sort((a, b) => b.over - a.over || b.own.length - a.own.length);
  if (!worst) return 'The season so far.';
  if (worst.over === 0) return `Within your limit in all ${many(worst.own.length, 'round')} so far.`;
  return `${capital(pestNames[worst.pest])} stood over your limit in ${worst.over} of ${many(worst.own.length, 'round')}.`;
}

/** Records of one noun within the season that ends on a day. */
function useDone<T extends { time: string }>(noun: string, seasonEnd: string, timeZone: string): T[] {
  const records = resource<{ records: Recorded<T>[] }>(placePath(noun)).value.data?.records ?? [];
  const from = addDays(seasonEnd, -365);
  return records.map(({ data }) => data).filter(({ time }) => localDay(Date.parse(time), timeZone) > from);
}

function Done({ seasonEnd, timeZone }: { seasonEnd: string; timeZone: string }) {
  const releases = useDone<Release>('releases', seasonEnd, timeZone).length;
  const washes = useDone<Treatment>('treatments', seasonEnd, timeZone).length;
  return (
    <Section title="What was done">
      <Almanac>
        <Line name="Friends set out" value={releases === 0 ? 'none' : many(releases, 'time')} />
        <Line name="Washed or sprayed" value={washes === 0 ? 'never' : many(washes, 'time')} />
      </Almanac>
      <a class="text-link" href="/releases">
        Each of them
      </a>
    </Section>
  );
}

function Spending() {
  const { data, refused } = resource<ShoppingAnswer>(placePath('shopping')).value;
  if (!data) {
    const words = refused ? `${refused.reason} ${refused.whatToDo}` : 'Adding up.';
    return (
      <Section title="Spent on friends">
        <p class="note">{words}</p>
      </Section>
    );
  }
  const { thisSeason, lastSeason, currency } = data;
  const { unpriced } = thisSeason;
  return (
    <Section title="Spent on friends">
      <Spent thisSeason={thisSeason} lastSeason={lastSeason} currency={currency} />
      {unpriced > 0 && (
        <p class="note">{many(unpriced, 'entry', 'entries')} without a price: the sum is too small by it.</p>
      )}
      <a class="text-link" href="/shopping">
        The shopping list
      </a>
    </Section>
  );
}

/** Harm as a grower feels it: how often and how far over the own limit. */
interface RoundsProps {
  rounds: readonly ToldRound[];
  pests: readonly PestForecast[];
}
function Harm({ rounds, pests }: RoundsProps) {
  const timeZone = zone.value;
  return (
    <Section title="Over your limit">
      <Almanac>
        {pests.map(({ pest, counted }) => {
          const own = ofPest(rounds, pest);
          const top = [...own].sort((a, b) => b.told - a.told)[0];
          const when = top && dayAndMonth(localDay(Date.parse(top.time), timeZone));
          const highest = top?.told
            ? `highest ${insects(top.told)} ${perUnit[counted.unit]}, ${when}`
            : 'none in any round';
          const most = top
            ? `${highest}; your limit ${Math.round(counted.limit)}`
            : 'count it, and it is told here';
          const value =
            own.length === 0
              ? 'not counted'
              : `${roundsOver(own, counted.limit)} of ${many(own.length, 'round')}`;
          return <Line key={pest} name={capital(pestNames[pest])} value={value} note={most} />;
        })}
      </Almanac>
    </Section>
  );
}

function Forecasts({ rounds: all, pests }: RoundsProps) {
  const timeZone = zone.value;
  const told = pests.filter(({ pest }) => ofPest(all, pest).length > 0);
  return (
    <>
      <Section title="How good the forecasts were">
        <p>{unbroken(howGoodWords(howGood(all)))}</p>
        <p class="note">
          Held against what was said about a week before each count, as it was kept then. Nothing is worked
          out again afterwards.
        </p>
      </Section>
      {told.map(({ pest, counted }, index) => {
        const rounds = ofPest(all, pest);
        const title = figureTitle(pest, counted.unit);
        return (
          <Section key={pest} title={title}>
            <HeldChart
              title={title}
              data={{ timeZone, unit: counted.unit, limit: counted.limit, rounds }}
              explained={index > 0}
            />
          </Section>
        );
      })}
    </>
  );
}

export function SeasonPage() {
  const { data: held, refused } = resource<HeldAnswer>(placePath('held')).value;
  const outcome = resource<Outcome | null>(placePath('outcome')).value.data;
  const timeZone = zone.value;
  const pests = outcome?.forecast.pests ?? [];
  const followUp = outcome?.advice.followUp;
  const counts = useCounts();
  if (!held) {
    return (
      <Shell>
        <PageHead
          sentence={refused?.reason ?? 'The season'}
          note={refused?.whatToDo ?? 'Fetching the season.'}
        />
      </Shell>
    );
  }
  const rounds = [...new Set(held.rounds.map(({ pest }) => pest))].flatMap((pest) => {
    const counted = pests.find((each) => each.pest === pest)?.counted;
    return toldRounds(ofPest(held.rounds, pest), counted ? historyOf(counts, counted).weeks : [], timeZone);
  });
  const today = localDay(nowMs.value, timeZone);
  const until = dayAndMonth(held.seasonEnd);
  return (
    <Shell>
      <PageHead
        sentence={seasonSentence(rounds, pests)}
        note={today > held.seasonEnd ? `It ended on ${until}.` : `The season goes on until ${until}.`}
      />
      {rounds.length === 0 ? (
        <a class="main-button" href="/round">
          Count now
        </a>
      ) : (
        <>
          <Harm rounds={rounds} pests={pests} />
          <Forecasts rounds={rounds} pests={pests} />
        </>
      )}
      {followUp && followUp.pests.length > 0 && <WhatFriendsHeld followUp={followUp} />}
      <Spending />
      <Done seasonEnd={held.seasonEnd} timeZone={timeZone} />
      <BesideEarlier pests={pests} />
      {followUp && followUp.nextYear.length > 0 && <NextYear suggestions={followUp.nextYear} />}
      <Section title="Keep it">
        <p>Everything of this season as one file, readable without this house.</p>
        <a class="key wide-key" href={placePath('season')} download>
          Take everything out
        </a>
      </Section>
    </Shell>
  );
}
