/** Suggestions about how friends were set out, looked for, and how often was counted. */
import { daysBetween, formatDay, localDay } from '../../climate/calendar.ts';
import type { Suggestion } from '../../followUps.ts';
import type { Treatment } from '../../season.ts';
import { residueOver } from '../conditions/residue.ts';
import { capital, verbFor } from '../grammar.ts';
import { nameOf, oldestFirst, type Told } from './told.ts';

/** Longer without a count is a gap. Judgement. */
const gapDays = 14;

/** Friends set out while a spray could still harm them. */
export function onResidue({ season, releases }: Told): Suggestion[] {
  const harmed = oldestFirst(releases).flatMap(({ releaseId, enemy, on }) => {
    const release = season.releases.find(({ id }) => id === releaseId);
    const end = release && residueOver(season, enemy, Date.parse(release.time));
    const spray = end && end.day > on ? season.treatments.find(({ id }) => id === end.id) : undefined;
    return spray && end ? [{ spray, enemy, on, until: end.day }] : [];
  });
  const [first] = harmed;
  if (!first) return [];
  const sprayed = localDay(Date.parse(first.spray.time), season.place.timeZone);
  return [
    {
      code: 'spray-before',
      text: `Keep ${daysBetween(sprayed, first.until)} days between ${sprayNames[first.spray.kind]} and setting ${nameOf(first.enemy)} out.`,
      evidence: `${capital(sprayNames[first.spray.kind])} on ${formatDay(sprayed)}, ${nameOf(first.enemy)} on ${formatDay(first.on)}.`,
    },
  ];
}

const sprayNames: Record<Treatment['kind'], string> = {
  'water-jet': 'a water jet',
  soap: 'soap',
  oil: 'oil',
  neem: 'neem',
  pyrethrins: 'pyrethrins',
  sulphur: 'sulphur',
  'other-spray': 'another spray',
};

/** The same friend did not settle again and again. */
export function anotherFriend({ releases }: Told): Suggestion[] {
  return [...new Set(releases.map(({ enemy }) => enemy))].flatMap((enemy) => {
    const own = releases.filter((release) => release.enemy === enemy);
    const none = own.filter(({ settlement }) => settlement === 'not-settled');
    if (none.length < 2 || own.some(({ settlement }) => settlement === 'settled')) return [];
    const name = nameOf(enemy);
    return [
      {
        code: 'another-friend',
        text: `Try another friend than ${name}, or set ${verbFor(name, 'it', 'them')} out in a warmer week.`,
        evidence: `${none.length} of ${own.length} releases of ${name} did not settle: ${none.map(({ on }) => formatDay(on)).join(', ')}.`,
      },
    ];
  });
}

/** Nobody looked when it would have told. */
export function lookInTime({ releases, today }: Told): Suggestion[] {
  const over = releases.filter(({ look }) => look.surelyBy < today);
  const untold = oldestFirst(over).filter(({ settlement }) => settlement === 'cannot-say');
  const [first] = untold;
  if (!first) return [];
  const days = daysBetween(first.on, first.look.from);
  return [
    {
      code: 'look-in-time',
      text: `Look for ${first.look.lookFor} about ${days} days after setting ${nameOf(first.enemy)} out.`,
      evidence: `${untold.length} of ${over.length} set out cannot be judged. ${first.evidence[0] ?? ''}`,
    },
  ];
}

/** Weeks without a count. */
export function countWeekly({ countDays }: Told): Suggestion[] {
  const gaps = countDays.slice(1).flatMap((day, i) => {
    const before = countDays[i]!;
    return daysBetween(before, day) > gapDays ? [{ before, day, days: daysBetween(before, day) }] : [];
  });
  const longest = gaps.reduce<(typeof gaps)[number] | undefined>(
    (a, b) => (a && a.days >= b.days ? a : b),
    undefined,
  );
  if (!longest) return [];
  return [
    {
      code: 'count-weekly',
      text: 'Count every week: a wave can come and go in three.',
      evidence: `Nothing was counted between ${formatDay(longest.before)} and ${formatDay(longest.day)}.`,
    },
  ];
}
