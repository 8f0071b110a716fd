/** Two ways side by side where the chance of the coming weeks does not tell them apart: a later week, and what each may cost. */
import type { Candidate, Way } from '../../services/model/index.ts';
import { chanceCounts } from './chances.ts';
import { dayAndMonth, localDay } from './dates.ts';
import { money } from './numbers.ts';

interface Course {
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

/** `In the week to 20 July: 9 of 10 if left, 4 of 10 with them.`, and the expected loss of each. */
export function apartWords(left: Course, other: Course, telling: Telling): string {
  return [weekWords(left, other, telling), lossWords(left.way, other.way, telling)].filter(Boolean).join(' ');
}

/** The week ahead in which they lie farthest apart; else the weeks over the limit of all that is ahead. */
function weekWords(left: Course, other: Course, { how, timeZone }: Telling): string {
  const weeks = left.weeks.flatMap((week, i) => {
    const same = other.weeks[i];
    return same ? [{ end: week.end, left: week.probabilityOverLimit, other: same.probabilityOverLimit }] : [];
  });
  const apart = (week: (typeof weeks)[number]) => Math.abs(week.left - week.other);
  const [farthest] = [...weeks].sort((a, b) => apart(b) - apart(a));
  if (farthest && apart(farthest) >= worthTelling) {
    const day = dayAndMonth(localDay(Date.parse(farthest.end), timeZone));
    return `Over it in the week to ${day}: ${chanceCounts(farthest.left)} if left, ${chanceCounts(farthest.other)} ${how}.`;
  }
  if (!left.way || !other.way) return '';
  const [before, after] = [left.way, other.way].map(({ weeksOver }) => Math.round(weeksOver));
  if (before === after) return '';
  return `Weeks over it, also later ones: about ${before} if left, about ${after} ${how}.`;
}

function lossWords(left: Way | undefined, other: Way | undefined, { how, currency }: Telling): string {
  if (!left || !other) return '';
  const sum = ({ expectedLoss }: Way) => money(expectedLoss, currency, 0);
  return `Crop and money together, about ${sum(left)} may be lost if left, about ${sum(other)} ${how}.`;
}
