import type { StoredReading } from './readingsContract.ts';

/**
 * Tells the first believed reading of each sensor in each stretch of `everyMs` (counted from 1970); to be asked with
 * each sensor's readings in order of time.
 */
export function firstOfEach(everyMs: number): (reading: StoredReading) => boolean {
  const last = new Map<string, number>();
  return ({ sensorId, timeMs, doubt }) => {
    const stretch = Math.floor(timeMs / everyMs);
    if (doubt !== undefined || last.get(sensorId) === stretch) return false;
    last.set(sensorId, stretch);
    return true;
  };
}
