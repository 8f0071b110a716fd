import { dayMs } from '../../units.ts';
import type { ConditionRule } from './releaseCase.ts';

const monthMs = 28 * dayMs;

/** Ants guard aphids and drive natural enemies away. */
export const ants: ConditionRule = {
  id: 'ants',
  judge({ season, pest, asOfMs }) {
    const source = 'Wyss et al. 1999: ladybird larvae work significantly worse on trees with ants';
    if (pest === 'trialeurodes-vaporariorum') {
      return {
        verdict: 'holds',
        text: 'Ants seldom matter for whitefly.',
        source: 'common practice, no source',
      };
    }
    const last = season.sightings
      .filter((s) => asOfMs - Date.parse(s.time) < monthMs && /\bants?\b/i.test(s.what))
      .sort((a, b) => Date.parse(a.time) - Date.parse(b.time))
      .at(-1);
    if (last === undefined) {
      return {
        verdict: 'cannot-say',
        text: 'Look for ants on the stems first; nobody has noted any or none.',
        source,
      };
    }
    const none = /\bno ants?\b/i.test(last.what);
    return none
      ? { verdict: 'holds', text: 'No ants were seen.', source }
      : { verdict: 'fails', text: 'Ants were seen: keep them off the stems before the release.', source };
  },
};
