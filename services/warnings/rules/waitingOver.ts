import {
  addDays,
  daysBetween,
  type EnemyId,
  formatDay,
  localDay,
  openOrders,
  residueOver,
  speciesById,
  startOfLocalDay,
  type Treatment,
} from '../../model/index.ts';
import { done, endOfDay, type Matter, type WarningFacts, type WarningRule, withdrawn } from './rule.ts';

/** A day or two need no reminder. */
const shortestWaitDays = 3;
const saidForDays = 7;

/** The wait after a wash or spray is over for the natural enemy that is wanted here. */
export const waitingOver: WarningRule = {
  id: 'waiting-over',
  matters: (facts) => wanted(facts).flatMap((enemy) => matterOf(enemy, facts)),
  ending: ({ deadlineMs }, { nowMs }) =>
    deadlineMs < nowMs
      ? done('It is past.')
      : withdrawn('The washes and sprays entered have changed, or the plan has.'),
};

/** Those ordered, those the advice wants, otherwise the first it weighed. */
function wanted({ season, issued: { advice }, nowMs }: WarningFacts): EnemyId[] {
  const plans = [...(advice.toOrder ?? []), ...(advice.plan ? [advice.plan] : [])];
  const named = [...openOrders(season, nowMs), ...plans].map(({ enemy }) => enemy);
  const weighed = advice.candidates.flatMap(({ plan }) => (plan ? [plan.enemy] : [])).slice(0, 1);
  return [...new Set(named.length > 0 ? named : weighed)];
}

function matterOf(enemy: EnemyId, { season, nowMs }: WarningFacts): Matter[] {
  const { timeZone } = season.place;
  const over = residueOver(season, enemy, nowMs);
  const treatment = season.treatments.find(({ id }) => id === over?.id);
  if (over === undefined || treatment === undefined) return [];
  const sprayed = localDay(Date.parse(treatment.time), timeZone);
  const deadlineMs = endOfDay(addDays(over.day, saidForDays - 1), timeZone);
  if (daysBetween(sprayed, over.day) < shortestWaitDays || deadlineMs < nowMs) return [];
  const { shortName } = speciesById(enemy);
  return [
    {
      id: `waiting-over-${enemy}-${treatment.id}-${over.day}`,
      opensMs: startOfLocalDay(over.day, timeZone),
      deadlineMs,
      text: `The wait after the ${kindWords[treatment.kind]} of ${formatDay(sprayed)} is over: ${shortName} may be released from ${formatDay(over.day)}.`,
      reason: 'The label and the law where you live come first.',
      ends: 'Ends a week later.',
      days: {
        uid: `waiting/${treatment.id}/${enemy}`,
        from: over.day,
        to: over.day,
        title: `Wait after the ${kindWords[treatment.kind]} is over: ${shortName} may be released`,
      },
    },
  ];
}

const kindWords: Record<Treatment['kind'], string> = {
  'water-jet': 'water jet',
  soap: 'soap',
  oil: 'oil',
  neem: 'neem',
  pyrethrins: 'pyrethrins',
  sulphur: 'sulphur',
  'other-spray': 'spray',
};
