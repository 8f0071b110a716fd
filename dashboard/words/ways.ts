/** Two ways side by side where the chance of the coming weeks does not tell them apart: a later week, and what each may cost. */
import type { Advice, Candidate, ReleasePlan, Way } from '../../services/model/index.ts';
import { chanceCounts, shadedPanes } from './chances.ts';
import { dayAndMonth, localDay } from './dates.ts';
import { money } from './numbers.ts';

interface Course {
  passesLimit: number;
  weeks: Candidate['weeks'];
  /** Absent where nothing had to be weighed. */
  way?: Way | undefined;
}
interface Telling {
  /** `with them`, `as tried`. */
  how: string;
  currency: string | undefined;
  timeZone: string;
}

/** Two panes of ten: less is hardly worth a sentence. Judgement. */
const worthTelling = 0.2;

/**
 * What the panes do not show: the week ahead that tells them apart, or the weeks of the season; and the expected loss of
 * each. Where both roofs are shaded all over, the weeks of the season come first.
 */
export function apartWords(left: Course, other: Course, telling: Telling): string {
  const eitherWay = [left, other].every(({ passesLimit }) => shadedPanes(passesLimit) === 10);
  const week = weekWords(left, other, telling);
  const over = eitherWay
    ? seasonWords(left, other, { ...telling, lead: 'Over your limit either way' }) || week
    : week || seasonWords(left, other, { ...telling, lead: 'Over it' });
  return [over, lossWords(left.way, other.way, telling)].filter(Boolean).join(' ');
}

/** Weeks over the limit still to come until the season ends, whole ones as everywhere. */
function seasonWords(left: Course, other: Course, { how, lead }: Telling & { lead: string }): string {
  if (!left.way || !other.way) return '';
  const [before, after] = [left.way, other.way].map(wholeWeeks);
  const still = `about ${before} more ${before === 1 ? 'week' : 'weeks'} this season`;
  if (before === after) return `${lead}, for ${still}.`;
  return `${lead}: for ${still} if left, for about ${after} ${how}.`;
}

const wholeWeeks = ({ weeksOver }: Way): number => Math.round(weeksOver);

/** The candidate the advice recommends, when it is one with a release. */
export function planned(advice: Advice): Candidate | undefined {
  const plan = advice.plan;
  if (!plan) return undefined;
  const own = advice.candidates.filter((each) => isSameParcel(each.plan, plan));
  // Both the parcel after a wash and the parcel alone may stand there; in advice from before that was drawn, the latter only.
  return own.find(({ washFirst }) => washFirst === advice.washFirst) ?? own[0];
}

/** The way that was weighed for a candidate drawn. */
export const wayOf = ({ ways = [] }: Advice, { id, plan, washFirst }: Candidate): Way | undefined =>
  ways.find((way) =>
    plan ? way.kind === (washFirst ? 'wash-then' : 'now') && isSameParcel(way.plan, plan) : way.kind === id,
  );

/** The way of the same parcel, alone, on the same day. */
export const wayOnDay = ({ ways = [] }: Advice, plan: ReleasePlan): Way | undefined =>
  ways.find(
    (way) => way.kind === 'now' && isSameParcel(way.plan, plan) && way.plan?.windowFrom === plan.windowFrom,
  );

const isSameParcel = (one: ReleasePlan | undefined, other: ReleasePlan): boolean =>
  one?.enemy === other.enemy && one.number === other.number;

/** Weeks over the limit as a column of a table, all of one span, which the note names. */
export function weeksOver(courses: readonly Pick<Course, 'weeks' | 'way'>[]): {
  cells: string[];
  note: string;
} {
  if (courses.some(({ way }) => way))
    return {
      cells: courses.map(({ way }) => (way ? `about ${wholeWeeks(way)}` : 'not weighed')),
      note: 'Weeks over your limit: still to come this season.',
    };
  const [first] = courses;
  return {
    cells: courses.map(({ weeks }) => {
      const over = weeks.reduce((sum, week) => sum + week.probabilityOverLimit, 0);
      return `${Math.round(over)} of ${weeks.length}`;
    }),
    note: `Weeks over your limit: of the next ${first?.weeks.length ?? 0}.`,
  };
}

/** The week ahead in which they lie farthest apart. */
function weekWords(left: Course, other: Course, { how, timeZone }: Telling): string {
  const both = left.weeks.flatMap((week, i) => {
    const same = other.weeks[i];
    return same ? [{ end: week.end, left: week.probabilityOverLimit, other: same.probabilityOverLimit }] : [];
  });
  const apart = (week: (typeof both)[number]) => Math.abs(week.left - week.other);
  const [farthest] = [...both].sort((a, b) => apart(b) - apart(a));
  if (!farthest || apart(farthest) < worthTelling) return '';
  const day = dayAndMonth(localDay(Date.parse(farthest.end), timeZone));
  return `Over it in the week to ${day}: ${chanceCounts(farthest.left)} if left, ${chanceCounts(farthest.other)} ${how}.`;
}

function lossWords(left: Way | undefined, other: Way | undefined, { how, currency }: Telling): string {
  if (!left || !other) return '';
  const sum = ({ expectedLoss }: Way) => money(expectedLoss, currency, 0);
  return `Crop and money together, about ${sum(left)} may be lost if left, about ${sum(other)} ${how}.`;
}
