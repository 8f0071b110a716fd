/** A sensor with its corrections changed, and the words for one. */
import type { Sensor } from '../../../services/model/index.ts';
import { degreeSign, ownStep } from '../../words/habits.ts';

type Correction = NonNullable<Sensor['corrections']>[number];

/** `1.5 °C is added`, in the person's own degrees. */
export function addedWords({ addC }: Correction): string {
  const step = `${Math.abs(ownStep(addC)).toFixed(1)} ${degreeSign()}`;
  if (addC === 0) return 'nothing is added';
  return addC > 0 ? `${step} is added` : `${step} is taken off`;
}

/** One for a day: the one of the same day goes. */
export const withCorrection = (sensor: Sensor, correction: Correction): Sensor => ({
  ...sensor,
  corrections: [...withoutCorrection(sensor, correction.from).corrections, correction].sort((a, b) =>
    a.from < b.from ? -1 : 1,
  ),
});

export const withoutCorrection = (sensor: Sensor, from: string) => ({
  ...sensor,
  corrections: (sensor.corrections ?? []).filter((each) => each.from !== from),
});
