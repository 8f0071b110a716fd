/** `npm run -s forecast -- FILE --as-of ISO [--json]`: forecast and advice from a season file, without the service. */
import { withNeededReadings } from '../forecasting/neededReadings.ts';
import type { CountedAs, PestForecast } from '../model/index.ts';
import {
  type Advice,
  type Forecast,
  forecastAndAdvise,
  formatDay,
  localDay,
  speciesById,
} from '../model/index.ts';
import { askedSeason, asOfOptions, calling, listed, many, runAsProgram } from './seasonFile.ts';
import type { Output } from './terminal.ts';

const usage = `Usage: npm run -s forecast -- FILE --as-of ISO [--json]
  FILE     a season file (docs/data.md)
  --as-of  the instant to forecast from, such as 2026-05-13T06:10:00Z; later entries are not used
  --json   print { forecast, advice } as JSON
  --help   print this`;

/** Runs the command. Answers the exit code: 0 done, 2 the call or the file needs mending. */
export const run = (args: readonly string[], output: Output): number =>
  calling({ args, options: asOfOptions, usage, output }, (call) => {
    const { season, asOf } = askedSeason(call, usage);
    const { readings, trapCounts, leafChecks } = season;
    output.progress(
      `${season.place.name}: ${many(readings, 'reading')}, ${many(trapCounts, 'trap count')}, ${many(leafChecks, 'leaf check')}. Working out the forecast ...`,
    );
    const outcome = forecastAndAdvise(withNeededReadings(season, asOf), asOf, {});
    output.result(
      call.values.json ? JSON.stringify(outcome, null, 2) : inWords(outcome, season.place.timeZone),
    );
  });

/** The outcome as a person reads it. */
export function inWords(
  { forecast, advice }: { forecast: Forecast; advice: Advice },
  timeZone: string,
): string {
  return [
    advice.sentence,
    ...listed('Why', advice.reasons),
    ...forecast.pests.flatMap((pest) =>
      listed(`${nameOf(pest)}, ${expected[pest.counted.unit]}`, weeks(pest, timeZone)),
    ),
    ...listed(
      'What we do not know',
      advice.doubts.map((doubt) => doubt.text),
    ),
    ...listed('Cautions', advice.cautions),
  ].join('\n');
}

const expected: Record<CountedAs['unit'], string> = {
  'trap-week': 'expected a trap and week if left',
  'ten-leaves': 'leaves with any expected of ten if left',
};

function nameOf({ pest }: PestForecast): string {
  const { shortName } = speciesById(pest);
  return shortName.charAt(0).toUpperCase() + shortName.slice(1);
}

function weeks(pest: PestForecast, timeZone: string): string[] {
  return pest.weeks.map(({ end, count }) => {
    const { q10, q25, q50, q75, q90 } = count;
    const day = formatDay(localDay(Date.parse(end), timeZone));
    const n = Math.round;
    return `to ${day}: about ${n(q50)}; half of the time ${n(q25)} to ${n(q75)}, 8 of 10 ${n(q10)} to ${n(q90)}`;
  });
}

runAsProgram(import.meta.url, run);
