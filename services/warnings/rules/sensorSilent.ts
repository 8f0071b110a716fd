import { formatDay, localDay } from '../../model/index.ts';
import { dayMs, done, type WarningRule, withdrawn } from './rule.ts';

/** A sensor that spoke before has been silent for a day: most often a flat battery. */
export const sensorSilent: WarningRule = {
  id: 'sensor-silent',
  matters: ({ season: { place, sensors }, latest }) =>
    latest.flatMap(({ sensorId, timeMs }) => {
      const name = sensors.find(({ id }) => id === sensorId)?.name;
      if (name === undefined) return [];
      return [
        {
          id: `sensor-silent-${sensorId}-${timeMs}`,
          opensMs: timeMs + dayMs + 1,
          deadlineMs: timeMs + 2 * dayMs,
          text: `${name} has been silent since ${formatDay(localDay(timeMs, place.timeZone))}: look at its battery.`,
          reason:
            'After a day of silence it is most often a flat battery; dates grow less sure without readings.',
          ends: 'Ends when the sensor speaks again.',
        },
      ];
    }),
  ending: ({ id }, { season, latest }) => {
    const spoke = latest.some(
      ({ sensorId }) =>
        id.startsWith(`sensor-silent-${sensorId}-`) && season.sensors.some((s) => s.id === sensorId),
    );
    return spoke ? done('It speaks again.') : withdrawn('The sensor was taken out.');
  },
};
