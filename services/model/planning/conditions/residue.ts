import { addDays, formatDay, localDay } from '../../climate/calendar.ts';
import type { EnemyId, Season } from '../../season.ts';
import { groupOf, unknownSprayDays, waitingTimes } from '../waitingTimes.ts';
import type { ConditionRule } from './releaseCase.ts';

/** No wash or spray of the last months may still harm the enemy on the day of release. */
export const residue: ConditionRule = {
  id: 'residue',
  judge({ season, enemy, on, asOfMs }) {
    const id = enemy.id as EnemyId;
    const end = residueOver(season, id, asOfMs);
    const source = end && waitingTimes[end.kind][groupOf(id)].source;
    if (end && source && on < end.day) {
      return {
        verdict: 'fails',
        text: `Wait until ${formatDay(end.day)}: the last wash or spray may still harm them.`,
        source,
      };
    }
    const unknown = newestUnknownSpray(season, asOfMs);
    if (unknown !== undefined && on < addDays(unknown, unknownSprayDays)) {
      return {
        verdict: 'cannot-say',
        text: `The spray of ${formatDay(unknown)} may still harm them: read its label or ask its maker.`,
        source: waitingTimes['other-spray'][groupOf(id)].source,
      };
    }
    return end && source
      ? { verdict: 'holds', text: `The waiting time is over on ${formatDay(end.day)}.`, source }
      : {
          verdict: 'holds',
          text: 'No wash or spray is noted that could still harm them.',
          source: 'your own entries',
        };
  },
};

/** First local day on which no noted treatment of known kind still harms this enemy, with the treatment that decides. */
export function residueOver(season: Season, enemy: EnemyId, asOfMs: number) {
  const ends = season.treatments
    .filter((t) => Date.parse(t.time) <= asOfMs)
    .flatMap((t) => {
      const days = waitingTimes[t.kind][groupOf(enemy)].days;
      const sprayed = localDay(Date.parse(t.time), season.place.timeZone);
      return days === undefined ? [] : [{ id: t.id, kind: t.kind, day: addDays(sprayed, days) }];
    });
  return ends.sort((a, b) => a.day.localeCompare(b.day)).at(-1);
}

function newestUnknownSpray(season: Season, asOfMs: number): string | undefined {
  const days = season.treatments
    .filter((t) => t.kind === 'other-spray' && Date.parse(t.time) <= asOfMs)
    .map((t) => localDay(Date.parse(t.time), season.place.timeZone));
  return days.sort().at(-1);
}
