/** How far the days ahead may be from the shared course: by lead, by what is known, and by past errors of the house. */
import { type Random, standardNormal } from '../numerics/random.ts';
import type { HouseDay } from './houseDays.ts';
import type { HouseResponse } from './houseResponse.ts';
import type { OutdoorDays } from './outdoorDays.ts';
import type { OutlookLaw } from './outlookLaw.ts';

export type SdByLead = (leadDays: number) => number;

/**
 * Spread of daily means in °C, `leadDays` = 1 on the first day: what the house makes of it, as wide as this house has
 * proved to be, and where the air outdoors is a forecast its error too, `staleDays` old already.
 */
export function spreadByLead(
  law: OutlookLaw,
  known: {
    days: readonly HouseDay[];
    response: HouseResponse;
    outdoors: OutdoorDays | undefined;
    staleDays: number;
  },
): SdByLead {
  const { days, response, outdoors, staleDays } = known;
  const own = ramp(outdoors ? law.responseSpread : law.spread);
  const taught = outdoors ? days.filter(({ age }) => outdoors(-age).known) : days;
  const scale = learnedScale(taught, response, { law, sd: own });
  if (!outdoors) return (leadDays) => scale * own(leadDays);
  const { first, slope } = law.forecastErrorC;
  const without = ramp(law.spread);
  return (leadDays) => {
    if (!outdoors(leadDays - 1).known) return without(leadDays);
    const outdoorSdC = first + slope * (leadDays - 1 + staleDays);
    const answeredC = response.outdoorSlope * outdoorSdC;
    return Math.min(without(leadDays), Math.hypot(scale * own(leadDays), answeredC));
  };
}

export const ramp =
  ({ sdC, first, slope }: { sdC: number; first: number; slope: number }): SdByLead =>
  (leadDays) =>
    sdC * Math.min(1, first + slope * leadDays);

/**
 * How many times wider than the law this house has been: the root mean square of past errors over the law's spread,
 * drawn towards 1 as if `spreadPriorDays` errors of just that size had been seen. The errors of one week are
 * one another's neighbours, so each counts for a third.
 */
function learnedScale(
  days: readonly HouseDay[],
  response: HouseResponse,
  { law, sd }: { law: OutlookLaw; sd: SdByLead },
): number {
  let squares = law.spreadPriorDays;
  let counted = law.spreadPriorDays;
  for (const day of days) {
    for (const leadDays of leadsLookedAt) {
      const ago = day.age + leadDays - 1;
      const said = response.expectedThen(ago, leadDays - 1);
      if (!said) continue;
      const weight = Math.exp(-day.age / law.memoryDays) / 3;
      squares += weight * ((day.meanC - said.meanC) / sd(leadDays)) ** 2;
      counted += weight;
    }
  }
  return Math.min(2.5, Math.max(0.5, Math.sqrt(squares / counted)));
}

const leadsLookedAt = [1, 3, 7];

/** AR(1): each day remembers most of the day before; the spread grows with the lead. */
export function anomalyPath(days: number, sd: SdByLead, law: OutlookLaw, random: Random): Float64Array {
  const path = new Float64Array(days);
  const fresh = Math.sqrt(1 - law.dailyCorrelation ** 2);
  let deviate = standardNormal(random);
  for (let day = 0; day < days; day += 1) {
    if (day > 0) deviate = law.dailyCorrelation * deviate + fresh * standardNormal(random);
    path[day] = sd(day + 1) * deviate;
  }
  return path;
}
