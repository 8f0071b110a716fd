/** The weekly letter: the sentence, what is due, and how last week's forecast did. */
import {
  addDays,
  capital,
  endOfSeason,
  formatDay,
  isCountedOnLeaves,
  localDay,
  type Place,
  speciesById,
} from '../model/index.ts';
import { enteredSeason, type Store } from '../store/store.ts';
import { againstRepeating, isInside, type ScoredCount, scoredCounts } from './lastWeek.ts';
import { footOf, itemsOf, type Message, type Told } from './message.ts';
import { dayMs } from './rules/rule.ts';

const daysAhead = 14;

export function letter(store: Store, place: Place, told: Told, nowMs: number, address?: string): Message {
  const today = localDay(nowMs, place.timeZone);
  const issued = store.issued.latest(place.id);
  const season = enteredSeason(store, place.id);
  const kept = store.issued.list(place.id);
  const scored = season ? scoredCounts(season, kept, nowMs) : [];
  return {
    subject: `${place.name}, the week of ${formatDay(today)}`,
    opening: [issued?.advice.sentence ?? 'No forecast has been worked out yet: count the traps.'],
    items: itemsOf(place, told),
    parts: [
      { title: 'What is due', lines: dueLines(store, place.id, today) },
      { title: 'How the forecast did', lines: scoreLines(scored, place, nowMs) },
      ...(issued && issued.advice.doubts.length > 0
        ? [{ title: 'What is not known', lines: issued.advice.doubts.map(({ text }) => text) }]
        : []),
    ],
    foot: footOf(place),
    ...(address !== undefined && { address }),
  };
}

/** The days of the calendar in the two weeks ahead. */
function dueLines(store: Store, placeId: string, today: string): string[] {
  const lines = store.telling.calendar
    .list(placeId)
    .filter(({ cancelled }) => !cancelled)
    .map(({ content }) => JSON.parse(content) as { from: string; to: string; title: string })
    .filter(({ from, to }) => to >= today && from <= addDays(today, daysAhead))
    .sort((a, b) => a.from.localeCompare(b.from))
    .map(({ from, title }) => `${formatDay(from)}: ${title}.`);
  return lines.length > 0 ? lines : ['Nothing in the next two weeks.'];
}

function scoreLines(scored: readonly ScoredCount[], place: Place, nowMs: number): string[] {
  const season = endOfSeason(place, localDay(nowMs, place.timeZone));
  const thisSeason = scored.filter(
    ({ timeMs }) => endOfSeason(place, localDay(timeMs, place.timeZone)) === season,
  );
  const lately = thisSeason.filter(({ timeMs }) => timeMs > nowMs - 7 * dayMs && timeMs <= nowMs);
  if (lately.length === 0) return ['There was no count in the last seven days to hold it against.'];
  const pests = [...new Set(lately.map(({ pest }) => pest))];
  return [
    ...pests.map((pest) =>
      pestLine(
        lately.filter((each) => each.pest === pest),
        isCountedOnLeaves(place, pest) ? 'of ten leaves' : 'on a trap',
      ),
    ),
    ...overallLines(thisSeason),
  ];
}

/** `Whitefly: 2 to 14 on a trap were expected (8 of 10); you counted 9 and 11, so 2 of 2 lay inside.` */
function pestLine(counts: readonly ScoredCount[], unit: string): string {
  const [first] = counts;
  if (first === undefined) return '';
  const { q10, q90 } = first.expected;
  const name = capital(speciesById(first.pest).shortName);
  const seen = listWords(counts.map(({ counted }) => String(Math.round(counted))));
  const inside = counts.filter(isInside).length;
  const range = `${Math.round(q10)} to ${Math.round(q90)}`;
  return `${name}: ${range} ${unit} were expected (8 of 10); you counted ${seen}, so ${inside} of ${counts.length} lay inside.`;
}

/** Also when it is bad. */
function overallLines(scored: readonly ScoredCount[]): string[] {
  const inside = scored.filter(isInside).length;
  const lines = [`This season ${inside} of ${scored.length} counts lay inside ranges that promise 8 of 10.`];
  const scores = againstRepeating(scored);
  if (scores) {
    const nearer = scores.forecast < scores.repeating;
    lines.push(
      nearer
        ? 'So far it came nearer than repeating the last count would have.'
        : 'So far repeating the last count would have come as near: trust your own eyes as much.',
    );
  }
  return lines;
}

const listWords = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
