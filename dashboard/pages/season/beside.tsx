/** This season beside earlier ones: first sightings, rounds, deeds, money and forecasts, as a table to print or save. */
import type { PestForecast, SeasonBeside } from '../../../services/model/index.ts';
import type { FigureTable } from '../../figures/palette.ts';
import { SaveCsv } from '../../parts/saveCsv.tsx';
import { Section } from '../../parts/section.tsx';
import { Table } from '../../parts/table.tsx';
import { placePath, resource } from '../../state.ts';
import { dayAndMonth } from '../../words/dates.ts';
import { capital, pestNames } from '../../words/names.ts';
import { insects, money, unbroken } from '../../words/numbers.ts';

export interface SeasonsAnswer {
  seasons: SeasonBeside[];
  currency?: string;
}
type Pests = readonly Pick<PestForecast, 'pest' | 'counted'>[];

const dayMs = 86_400_000;
const yearOf = ({ seasonEnd }: SeasonBeside) => seasonEnd.slice(0, 4);
const firstSeenIn = ({ pests }: SeasonBeside, pest: string) =>
  pests.find((each) => each.pest === pest)?.firstSeen;

/** `Whitefly: first seen 4 May, 14 days later than in 2025.`, of every pest that both seasons know. */
export function firstSightings([now, before]: readonly SeasonBeside[]): string[] {
  if (!now || !before) return [];
  const years = Number(yearOf(now)) - Number(yearOf(before));
  return now.pests.flatMap(({ pest, firstSeen }) => {
    const earlier = firstSeenIn(before, pest);
    if (firstSeen === undefined || earlier === undefined) return [];
    // 28 February stands for the 29th.
    const sameYear = `${Number(earlier.slice(0, 4)) + years}${earlier.slice(4).replace('-02-29', '-02-28')}`;
    const days = Math.round((Date.parse(firstSeen) - Date.parse(sameYear)) / dayMs);
    const many = `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`;
    const when = days === 0 ? 'on the same day as' : `${many} ${days > 0 ? 'later' : 'earlier'} than`;
    return [
      `${capital(pestNames[pest])}: first seen ${dayAndMonth(firstSeen)}, ${when} in ${yearOf(before)}.`,
    ];
  });
}

/** One column a season, the newest first; a pest that was counted in none of them has no rows. */
export function besideTable({ seasons, currency }: SeasonsAnswer, pests: Pests): FigureTable {
  const row = (name: string, cell: (season: SeasonBeside) => string) => [name, ...seasons.map(cell)];
  const ofPest = pests.flatMap(({ pest, counted }) => {
    const name = capital(pestNames[pest]);
    const roundsIn = (season: SeasonBeside) => season.pests.find((each) => each.pest === pest)?.rounds ?? [];
    if (seasons.every((season) => roundsIn(season).length === 0)) return [];
    const counts = (season: SeasonBeside, words: (rounds: number[]) => string) => {
      const rounds = roundsIn(season);
      return rounds.length === 0 ? 'not counted' : words(rounds);
    };
    return [
      row(`${name}, first seen`, (season) => {
        const day = firstSeenIn(season, pest);
        return day === undefined ? counts(season, () => 'never') : dayAndMonth(day);
      }),
      row(`${name}, highest round`, (season) => counts(season, (rounds) => insects(Math.max(...rounds)))),
      row(`${name}, rounds within your limit`, (season) =>
        counts(
          season,
          (rounds) => `${rounds.filter((count) => count <= counted.limit).length} of ${rounds.length}`,
        ),
      ),
    ];
  });
  const forecasts = row('Counts inside the forecast’s range', ({ pests: own }) => {
    const sum = (of: 'inside' | 'foretold') => own.reduce((total, each) => total + each[of], 0);
    return sum('foretold') === 0 ? 'none kept' : `${sum('inside')} of ${sum('foretold')}`;
  });
  const times = (n: number) => (n === 0 ? 'never' : `${n} ${n === 1 ? 'time' : 'times'}`);
  return {
    head: ['Season', ...seasons.map(yearOf)],
    rows: [
      ...ofPest,
      forecasts,
      row('Friends set out', ({ releases }) => times(releases)),
      row('Washed or sprayed', ({ treatments }) => times(treatments)),
      row('Spent on friends', ({ spent, unpriced }) =>
        unpriced > 0 ? `${money(spent, currency)} and ${unpriced} without a price` : money(spent, currency),
      ),
    ],
  };
}

export function BesideEarlier({ pests }: { pests: Pests }) {
  const { data } = resource<SeasonsAnswer>(placePath('seasons')).value;
  if (!data || data.seasons.length < 2) return null;
  const title = 'Beside earlier seasons';
  const table = besideTable(data, pests);
  return (
    <Section title={title}>
      {firstSightings(data.seasons).map((words) => (
        <p key={words}>{unbroken(words)}</p>
      ))}
      <Table {...table} caption={title} />
      <SaveCsv title={title} table={table} />
      <p class="note">
        A season is named by the year in which it ends; today’s limit is held against all. The range is the
        one for 8 of 10, as it was kept a week before.
      </p>
    </Section>
  );
}
