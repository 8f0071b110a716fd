/** The page docs/forecast-scores.md. */
import { type PestId, speciesById } from '../services/model/index.ts';
import { trialByName } from '../simulators/trials.ts';
import {
  type Baseline,
  bestBaseline,
  countsOf,
  coverages,
  mean,
  median,
  pestsOf,
  type Skill,
  skillOf,
} from './forecastScores.ts';
import type { SeasonScore } from './forecastSeason.ts';
import { percent, type Stamp, stampWords, table } from './page.ts';

export function forecastPage(seasons: readonly SeasonScore[], stamp: Stamp): string {
  const pests = pestsOf(seasons);
  const chosen = new Map(pests.map((pest) => [pest, bestBaseline(countsOf(seasons, pest))]));
  return [
    opening,
    stampWords(stamp, seasons.length),
    `## By pest\n\n${byPest(seasons, chosen)}`,
    `## By weeks ahead\n\n${byLead(seasons, chosen)}`,
    `## By kind of season\n\n${byTrial(seasons, chosen)}`,
    `## Do the ranges hold what they promise?\n\n${ranges(seasons, pests)}`,
    `## Insects per m2\n\n${densities(seasons, pests)}`,
    `## Dates of the first wave\n\n${waves(seasons, pests)}`,
    `## Money where there is no pest\n\n${quiet(seasons)}`,
  ].join('\n\n');
}

const opening = `# How good the forecasts are in the virtual garden

This page is written by \`npm run study:forecast\`. Each season is played by single insects
([simulator.md](simulator.md)), another model than the forecast's, with numbers of its own drawn around the published
ones; after each round of counts from the fourth on a forecast is made from what was written down until then.

Scores are the mean CRPS on log(1 + count): smaller is better. The baseline is "as last time" or "as the last three
went on", whichever did better, each with the spread that did best, all chosen in hindsight. The limit knows the
simulated insects and how each card draws them; only the luck of the count is left to it. The share of the possible
skill is (baseline - forecast) / (baseline - limit): 0 is no better than the baseline, 1 is out of reach. Seasons in
which the forecast is worse than the baseline are left in. One virtual garden is not the world: real houses will score
lower. Judgements of the forecast (births and crowding in a house, how pests sit on leaves, how sure the search of enemies
is, that cards take what they catch and fill up) were made looking at gardens 101 to 104 of several kinds, and in earlier versions at the first of each kind.`;

const name = (pest: PestId) => speciesById(pest).shortName;
const number = (value: number) => value.toFixed(3);
const share = (skill: Skill) =>
  Math.abs(skill.baseline - skill.limit) < 1e-9 ? '-' : skill.share.toFixed(2);
const figures = (skill: Skill) => [
  String(skill.counts),
  number(skill.ours),
  number(skill.baseline),
  number(skill.limit),
  share(skill),
];
const columns = ['Counts', 'Forecast', 'Baseline', 'Limit', 'Share of the possible'];

function byPest(seasons: readonly SeasonScore[], chosen: ReadonlyMap<PestId, Baseline>): string {
  const rows = [...chosen].map(([pest, baseline]) => {
    const words = baseline.of === 'last' ? 'as last time' : 'as the trend goes';
    return [name(pest), words, ...figures(skillOf(countsOf(seasons, pest), baseline))];
  });
  return table(['Pest', 'Baseline', ...columns], rows);
}

function byLead(seasons: readonly SeasonScore[], chosen: ReadonlyMap<PestId, Baseline>): string {
  const rows = [...chosen].map(([pest, baseline]) => [
    name(pest),
    ...[1, 2, 3, 4].map((lead) => {
      const counts = countsOf(seasons, pest).filter((count) => count.lead === lead);
      return counts.length === 0 ? '-' : share(skillOf(counts, baseline));
    }),
  ]);
  return table(['Share of the possible', '1 week', '2 weeks', '3 weeks', '4 weeks'], rows);
}

function byTrial(seasons: readonly SeasonScore[], chosen: ReadonlyMap<PestId, Baseline>): string {
  const trials = [...new Set(seasons.map(({ task }) => task.trial))];
  const rows = trials.flatMap((trial) => {
    const own = seasons.filter(({ task }) => task.trial === trial);
    return [...chosen].flatMap(([pest, baseline]) => {
      const counts = countsOf(own, pest);
      if (counts.length === 0) return [];
      const bySeason = own.map((season) => skillOf(countsOf([season], pest), baseline).share);
      const row = [
        trial,
        name(pest),
        ...figures(skillOf(counts, baseline)),
        Math.min(...bySeason).toFixed(2),
      ];
      return [row];
    });
  });
  const about = trials.map((trial) => `- ${trial}: ${trialByName(trial).about}`).join('\n');
  return `${table(['Season', 'Pest', ...columns, 'Worst season'], rows)}\n\n${about}`;
}

function ranges(seasons: readonly SeasonScore[], pests: readonly PestId[]): string {
  const rows = pests.map((pest) => {
    const { half, eight, nineteen } = coverages(countsOf(seasons, pest));
    return [name(pest), percent(half), percent(eight), percent(nineteen)];
  });
  return `Share of the counts inside the range; ties of small counts are broken by lot, so that they do not flatter.

${table(['Pest', 'half', '8 of 10', '19 of 20'], rows)}`;
}

function densities(seasons: readonly SeasonScore[], pests: readonly PestId[]): string {
  const rows = pests.flatMap((pest) =>
    (['adults', 'young'] as const).map((what) => {
      const own = seasons
        .flatMap((season) => season.densities)
        .filter((one) => one.pest === pest && one.what === what);
      const { half, eight, nineteen } = coverages(own);
      const crps = number(mean(own.map((one) => one.crps)));
      return [name(pest), what, String(own.length), crps, percent(half), percent(eight), percent(nineteen)];
    }),
  );
  return `Against the true number, one to four weeks ahead, CRPS on log(1 + insects per m2 of ground).

${table(['Pest', 'Stage', 'Forecasts', 'CRPS', 'half', '8 of 10', '19 of 20'], rows)}`;
}

function waves(seasons: readonly SeasonScore[], pests: readonly PestId[]): string {
  const rows = pests.map((pest) => {
    const own = seasons
      .flatMap((season) => season.waves)
      .filter((wave) => wave.pest === pest && wave.daysAhead >= 10 && wave.daysAhead <= 18);
    const errors = own.map(({ errorDays }) => errorDays);
    const figure = (value: number | undefined) => (value === undefined ? '-' : value.toFixed(1));
    return [name(pest), String(own.length), figure(median(errors.map(Math.abs))), figure(median(errors))];
  });
  return `The middle of the time at which today's young become adult, where it really lay 10 to 18 days ahead. Days;
above 0 is forecast too late.

${table(['Pest', 'Waves', 'Median distance', 'Median error'], rows)}`;
}

function quiet(seasons: readonly SeasonScore[]): string {
  const weeks = seasons.reduce((sum, { quietWeeks }) => sum + quietWeeks.weeks, 0);
  if (weeks === 0) return 'No season without a pest was played.';
  const spending = seasons.reduce((sum, { quietWeeks }) => sum + quietWeeks.spending, 0);
  return `In ${weeks} weeks of seasons without any pest the advice asked for money in ${spending} (${percent(spending / weeks)}).`;
}
