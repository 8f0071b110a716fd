/** A sensor with its corrections changed, and the words for one. */
import { mostCorrectionC, type Sensor } from '../../../services/model/index.ts';
import type { Issue } from '../../api.ts';
import { numberFrom, numberMissing } from '../../parts/field.tsx';
import { celsiusStepTyped, degreeSign, ownStep } from '../../words/habits.ts';

type Correction = NonNullable<Sensor['corrections']>[number];

/** What is amiss with the degrees typed in, told in the person's own. */
export function addAmiss(typed: string): Issue | undefined {
  const missing = numberMissing('addC', typed, 'type degrees, such as 1.5 or -0.5');
  if (missing || Math.abs(celsiusStepTyped(numberFrom(typed) ?? 0)) <= mostCorrectionC) return missing;
  const most = `${ownStep(mostCorrectionC)} ${degreeSign()}`;
  const expected = `type at most ${most} more or less: a sensor that is further off is broken`;
  return { path: 'addC', expected, received: typed };
}

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
