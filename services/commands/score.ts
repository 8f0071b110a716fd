/** `npm run -s score -- FILE... [--json]`: how good the forecasts of past seasons would have been, week by week. */
import { type PestScore, replay, scoresByPest, speciesById } from '../model/index.ts';
import { calling, readSeason, runAsProgram } from './seasonFile.ts';
import { CannotRun, type Output } from './terminal.ts';

const usage = `Usage: npm run -s score -- FILE... [--json]
  FILE     season files (docs/data.md); each is played again from its fourth round of counts on
  --json   print { seasons: [{ place, counts, scores }], scores } as JSON
  --help   print this`;

const options = {
  json: { type: 'boolean', default: false },
  help: { type: 'boolean', short: 'h', default: false },
} as const;

/** Runs the command. Answers the exit code: 0 done, 2 the call or a file needs mending. */
export const run = (args: readonly string[], output: Output): number =>
  calling({ args, options, usage, output }, ({ values, positionals }) => {
    if (positionals.length === 0) throw new CannotRun(`Name one season file or more.\n${usage}`);
    const seasons = positionals.map((file) => {
      const season = readSeason(file);
      const counts = replay(season, {}, (asOf) =>
        output.progress(`${season.place.name}: ${asOf.slice(0, 10)}`),
      );
      return { place: season.place.id, counts, scores: scoresByPest(counts) };
    });
    const scores = scoresByPest(seasons.flatMap(({ counts }) => counts));
    output.result(values.json ? JSON.stringify({ seasons, scores }, null, 2) : inWords(scores));
  });

/** The scores as a table a person can read. */
export function inWords(scores: readonly PestScore[]): string {
  if (scores.length === 0)
    return 'No count could be scored: a forecast is scored from the fourth round of counts on, against rounds up to four weeks later.';
  return scores.map(ofPest).join('\n\n');
}

function ofPest({ pest, counts, leads, interval, coverage }: PestScore): string {
  const n = (value: number) => value.toFixed(2);
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const { shortName } = speciesById(pest);
  return [
    `${shortName.charAt(0).toUpperCase()}${shortName.slice(1)}, ${counts} counts. Distance on log(1 + count), smaller is better (CRPS):`,
    '  weeks ahead   counts   forecast   as last time   as the trend goes',
    ...leads.map(
      ({ lead, counts: at, crps, last, trend }) =>
        `  ${String(lead).padEnd(12)}  ${String(at).padStart(6)}   ${n(crps).padStart(8)}   ${n(last).padStart(12)}   ${n(trend).padStart(17)}`,
    ),
    `  Ranges: half held ${percent(coverage.share50)}, 8 of 10 held ${percent(coverage.share80)}, 19 of 20 held ${percent(coverage.share95)}.`,
    `  Weighted interval score ${n(interval.total)}: width ${n(interval.spread)}, too high ${n(interval.overprediction)}, too low ${n(interval.underprediction)}.`,
  ].join('\n');
}

runAsProgram(import.meta.url, run);
