/** The page docs/advice-scores.md. */
import { trialByName } from '../simulators/trials.ts';
import { type AdviceScore, lossOf, type Played } from './adviceSeason.ts';
import { mean } from './forecastScores.ts';
import { cropWorth } from './loss.ts';
import { percent, type Stamp, stampWords, table } from './page.ts';

const players = [
  ['never', 'never'],
  ['calendar', 'every two weeks'],
  ['threshold', 'when the count passes the limit'],
  ['rule', 'plain rule'],
  ['advice', 'the advice'],
  ['best', 'best known in hindsight'],
] as const;
type Player = (typeof players)[number][0];

export function advicePage(seasons: readonly AdviceScore[], stamp: Stamp): string {
  return [
    opening,
    stampWords(stamp, seasons.length),
    `## All seasons with a pest\n\n${together(seasons)}`,
    `## By kind of season\n\n${byTrial(seasons)}`,
    `## Where there is no pest\n\n${pestFree(seasons)}`,
  ].join('\n\n');
}

const opening = `# What following the advice costs in the virtual garden

This page is written by \`npm run study:advice\`. Each season of single insects ([simulator.md](simulator.md)) is played
week by week with the same weather, visitors and luck, everybody buying in whole pieces: by a grower who does nothing, by
two habits, by the plain rule, by one who follows the advice to the letter, and by the cheapest plan found afterwards among
some hundred, single large parcels included, and the best of them with the plants washed as well (habits and rule never wash).
A loss is money (parcels, their fees, soap) and harm: the part of a crop worth
${cropWorth} that pest-days above what a plant bears take away (\`studies/loss.ts\`; worth and scale are judgement). The advice
reckons with the same law, so losses by another law stand beside: each day with more than a plant bears takes an equal part
of the crop. The plain rule was tuned for each pest on gardens 101 to 104 of its kind (thrips and mites again with
whole pieces, which changed nothing); the advice was changed after looking at gardens 101 to 104 and 171.

The gap closed is (never - ours) / (never - best known), of the first four seasons of each kind, in which the best was looked
for; the other columns are of all. The worst season stands beside the mean.`;

const of = (season: AdviceScore, player: Player): Played | undefined => season[player];
const losses = (seasons: readonly AdviceScore[], player: Player) =>
  seasons.flatMap((season) => {
    const played = of(season, player);
    return played ? [lossOf(played)] : [];
  });

function together(seasons: readonly AdviceScore[]): string {
  const harmed = seasons.filter(({ pestFree }) => !pestFree);
  const rows = players.flatMap(([player, words]) => {
    const played = harmed.flatMap((season) => of(season, player) ?? []);
    if (played.length === 0) return [];
    const loss = mean(played.map(lossOf));
    return [
      [
        words,
        loss.toFixed(0),
        mean(played.map(({ harm }) => harm)).toFixed(0),
        mean(played.map(({ money }) => money)).toFixed(0),
        mean(played.map(({ parcels }) => parcels)).toFixed(1),
        Math.max(...played.map(lossOf)).toFixed(0),
        mean(played.map(({ harmByDays, money }) => harmByDays + money)).toFixed(0),
        closed(harmed, player),
      ],
    ];
  });
  const head = [
    'Grower',
    'Mean loss',
    'of it harm',
    'of it money',
    'Parcels',
    'Worst season',
    'Mean loss by the other law',
    'Gap closed',
  ];
  return table(head, rows);
}

/** Where even the best plan saves less, a share of it says nothing. */
const leastGap = 10;

/** Of the seasons in which the best was looked for. */
function closed(seasons: readonly AdviceScore[], player: Player): string {
  const searched = seasons.filter(({ best }) => best);
  const [never, ours, best] = (['never', player, 'best'] as const).map((each) => losses(searched, each));
  if (!best || best.length === 0) return '-';
  const gap = mean(never!) - mean(best);
  return gap < leastGap ? '-' : ((mean(never!) - mean(ours!)) / gap).toFixed(2);
}

function byTrial(seasons: readonly AdviceScore[]): string {
  const trials = [...new Set(seasons.map(({ task }) => task.trial))];
  const rows = trials.map((trial) => {
    const own = seasons.filter(({ task }) => task.trial === trial);
    const cells = players.map(([player]) => {
      const all = losses(own, player);
      return all.length === 0 ? '-' : `${mean(all).toFixed(0)} (${Math.max(...all).toFixed(0)})`;
    });
    return [trial, String(own.length), ...cells, closed(own, 'advice')];
  });
  const about = trials.map((trial) => `- ${trial}: ${trialByName(trial).about}`).join('\n');
  const head = ['Season', 'Seasons', ...players.map(([, words]) => words), 'Gap closed by the advice'];
  return `Mean loss, in brackets the worst season. The parcels that some kinds of season bring along in the study of
forecasts are left out here.\n\n${table(head, rows)}\n\n${about}`;
}

function pestFree(seasons: readonly AdviceScore[]): string {
  const own = seasons.filter((season) => season.pestFree);
  if (own.length === 0) return 'No season without a pest was played.';
  const unspent = own.filter((season) => season.advice.parcels === 0).length;
  return `In ${unspent} of ${own.length} seasons without any pest (${percent(unspent / own.length)}) the advice bought nothing.`;
}
