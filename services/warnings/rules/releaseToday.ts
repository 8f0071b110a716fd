import { localDay } from '../../model/index.ts';
import { endOfDay, type WarningRule } from './rule.ts';

/** A parcel has come: most natural enemies keep for a day or two only. */
export const releaseToday: WarningRule = {
  id: 'release-today',
  raise({ place, issued, nowMs }) {
    const { decision, sentence } = issued.advice;
    if (decision !== 'release') return [];
    const today = localDay(nowMs, place.timeZone);
    return [{ id: `release-${today}`, deadlineMs: endOfDay(today, place.timeZone), text: sentence }];
  },
};
