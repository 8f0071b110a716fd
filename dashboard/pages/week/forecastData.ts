/** Gathers what the forecast figure needs from the outcome and the counts. */
import type { LeafCheck, PestForecast, TrapCount } from '../../../services/model/index.ts';
import type { Outcome, Recorded } from '../../api.ts';
import { type Counts, historyOf } from '../../figures/countWeeks.ts';
import type { ForecastFigureData } from '../../figures/forecastData.ts';
import { placePath, resource, zone } from '../../state.ts';
import { dayAndMonth, instantOf } from '../../words/dates.ts';
import { enemyWords } from '../../words/names.ts';
import { planned } from '../../words/ways.ts';

/** Everything counted in the place that is shown. */
export function useCounts(): Counts {
  const of = <T>(noun: string) =>
    resource<{ records: Recorded<T>[] }>(placePath(noun)).value.data?.records.map(({ data }) => data) ?? [];
  return {
    traps: of<TrapCount>('trap-counts'),
    leaves: of<LeafCheck>('leaf-checks'),
    timeZone: zone.value,
  };
}

/** The pest the sentence is about, else the one closest to its limit. */
export function pestInFocus({ forecast, advice }: Outcome): PestForecast | undefined {
  const byChance = [...forecast.pests].sort((a, b) => b.passesLimit.probability - a.passesLimit.probability);
  return forecast.pests.find((each) => each.pest === advice.pest) ?? byChance[0];
}

interface Wanted {
  outcome: Outcome;
  pest: PestForecast;
  counts: Counts;
  timeZone: string;
  wide: boolean;
  withPlan: boolean;
}
export function forecastData({
  outcome,
  pest,
  counts,
  timeZone,
  wide,
  withPlan,
}: Wanted): ForecastFigureData {
  const { forecast, advice } = outcome;
  const way = withPlan && advice.pest === pest.pest ? planned(advice) : undefined;
  const plan = way?.plan;
  const label = plan && {
    ms: instantOf(plan.windowFrom, 12, timeZone),
    text: `release, ${dayAndMonth(plan.windowFrom)}`,
  };
  return {
    asOfMs: Date.parse(forecast.asOf),
    timeZone,
    unit: pest.counted.unit,
    limit: pest.counted.limit,
    history: historyOf(counts, pest.counted),
    leave: pest.weeks,
    ...(way &&
      plan &&
      label && {
        plan: {
          words: `with ${way.washFirst ? 'a wash and ' : ''}${enemyWords[plan.enemy].name}`,
          weeks: way.weeks,
          label,
        },
      }),
    pastWeeks: wide ? 7 : 4,
    aheadWeeks: wide ? 6 : 5,
  };
}
