import { formatDay, localDay } from '../../model/index.ts';
import type { WarningRule } from './rule.ts';

const dayMs = 86_400_000;

/** A sensor that spoke before has been silent for a day: most often a flat battery. */
export const sensorSilent: WarningRule = {
  id: 'sensor-silent',
  raise({ place, sensors, latest, nowMs }) {
    return latest
      .filter((reading) => nowMs - reading.timeMs > dayMs)
      .map((reading) => {
        const name = sensors.find((s) => s.id === reading.sensorId)?.name ?? reading.sensorId;
        return {
          id: `sensor-silent-${reading.sensorId}-${reading.timeMs}`,
          deadlineMs: nowMs,
          text: `${name} has been silent since ${formatDay(localDay(reading.timeMs, place.timeZone))}: most often a flat battery.`,
        };
      });
  },
};
