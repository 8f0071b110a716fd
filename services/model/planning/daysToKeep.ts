/** The days to keep: wash, order, set out, look, count. */
import { addDays } from '../climate/calendar.ts';
import type { Advice, ReleasePlan } from '../outcome.ts';
import { isLeavesOnly, type Place, type Season } from '../season.ts';
import { speciesById } from '../species/catalogue.ts';
import { nextCountDay, type PestDecision } from './decide.ts';
import { capital } from './grammar.ts';
import { parcelWords, soldAs } from './parcel.ts';
import { washDay } from './washDay.ts';

type DayToKeep = Omit<Advice['daysToKeep'][number], 'isNext'>;

/** `looks` are those after releases that were made. */
export function daysToKeep(
  season: Season,
  decision: PestDecision,
  asOfMs: number,
  looks: readonly DayToKeep[] = [],
): Advice['daysToKeep'] {
  if (decision.because === 'season-over') return [];
  const countOn = nextCountDay(season, decision.evidence.lastCountMs, asOfMs);
  const text = isLeavesOnly(season.place)
    ? 'leaves with any, of ten looked under'
    : 'the traps and look under ten leaves';
  const count = { day: countOn, verb: 'Count', text };
  const plan = decision.chosen?.candidate.plan;
  const follows = plan && decision.choice !== 'wash' ? planDays(season.place, plan, decision.choice) : [];
  const washes =
    decision.washFirst || decision.choice === 'wash'
      ? [{ day: washDay(season, asOfMs), verb: 'Wash', text: 'the plants with soap, under the leaves too' }]
      : [];
  const kept = [...washes, ...follows, ...looks, count];
  return kept
    .sort((a, b) => a.day.localeCompare(b.day))
    .map((entry, index) => ({ ...entry, isNext: index === 0 }));
}

/** What to order: pieces and animals, and the hour of the last day. */
function orderWords({ supplier }: Place, plan: ReleasePlan): string {
  const inAll = soldAs(plan.enemy).perPiece > 1 ? `, ${plan.number} in all` : '';
  const hour = supplier?.cutoffHour ?? 24;
  const until = plan.orderBy && hour > 0 && hour < 24 ? `, before ${hour}:00` : '';
  return parcelWords(plan) + inAll + until;
}

function planDays(place: Place, plan: ReleasePlan, choice: PestDecision['choice']) {
  const record = speciesById(plan.enemy);
  const { verb, where, lookFor } = soldAs(plan.enemy);
  const buys = choice === 'order' || choice === 'top-up';
  return [
    ...(buys ? [{ day: plan.orderBy ?? plan.windowFrom, verb: 'Order', text: orderWords(place, plan) }] : []),
    {
      day: plan.windowFrom,
      verb: capital(verb),
      text: `the ${record.shortName}, ${where}`,
    },
    { day: plan.lookOn, verb: 'Look', text: `for ${lookFor}` },
    { day: addDays(plan.lookOn, 7), verb: 'Top up', text: 'or stop: we will say which' },
  ];
}
