/**
 * The computing thread of "What if": the season from the house, the same calculation as the house's own, in the
 * browser. A thread of its own, so that the page answers while it works.
 */
import {
  type Fit,
  fit as fitSeason,
  leftWay,
  type Season,
  tryRelease,
  usualParcels,
} from '../../services/model/index.ts';
import { get } from '../api.ts';
import type { Ask, Start, Told } from './messages.ts';

let begun: { season: Season; fitted: Fit; asOfMs: number } | undefined;
const tell = (told: Told) => postMessage(told);

async function begin({ placeId, asOf, seed, members }: Extract<Ask, { kind: 'begin' }>): Promise<void> {
  // No more than the house's own forecast reads: a year of minutes is hundreds of megabytes.
  const answer = await get<Season>(`/api/places/${placeId}/season?asOf=${encodeURIComponent(asOf)}`);
  if (!answer.ok) return tell({ kind: 'refused', refused: answer.refused });
  const season = answer.data;
  const asOfMs = Date.parse(asOf);
  const fitted = fitSeason(season, asOf, { seed, members });
  begun = { season, fitted, asOfMs };
  const starts = fitted.forecast.pests.flatMap((left): Start[] => {
    const { pest } = left;
    const parcels = usualParcels(season, pest, asOfMs);
    if (parcels.length === 0) return [];
    return [{ pest, left, leftWay: leftWay(season, fitted, pest, asOfMs), parcels }];
  });
  tell({ kind: 'ready', starts });
}

function answerTry({ number, trial }: Extract<Ask, { kind: 'try' }>): void {
  if (!begun) throw new Error('A try came before its season: begin first.');
  const { season, fitted, asOfMs } = begun;
  tell({ kind: 'tried', number, tried: tryRelease(season, fitted, trial, asOfMs) });
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  if (data.kind === 'try') return answerTry(data);
  begin(data).catch((error: unknown) =>
    tell({
      kind: 'refused',
      refused: {
        code: 'fault',
        reason: `It could not be worked out here: ${String(error)}`,
        whatToDo: 'The sentence of the week still stands.',
      },
    }),
  );
});
