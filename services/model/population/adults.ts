/**
 * Laying adults in six boxes of physiological age: each is left with the chance 6 x clock / life in a
 * step, so the mean life is exact at any temperature.
 */
export const boxCount = 6;

/** Eggs or young by box against the first: falling linearly to the end of life (references: births decline about linearly). */
const layingByBox = Float64Array.from({ length: boxCount }, (_, box) => 1 - box / boxCount);

/** All adults in the boxes. */
export function adultsIn(boxes: Float64Array): number {
  let sum = 0;
  for (let box = 0; box < boxCount; box++) sum += boxes[box]!;
  return sum;
}

/** Adults weighted by how much they lay against the first days of laying. */
export function layingAdults(boxes: Float64Array): number {
  let sum = 0;
  for (let box = 0; box < boxCount; box++) sum += boxes[box]! * layingByBox[box]!;
  return sum;
}

/** Ages the adults by `clock` units out of a mean life of `life` units; returns those who died of age. */
export function ageAdults(boxes: Float64Array, clock: number, life: number): number {
  const leaving = Math.min(1, (boxCount * clock) / life);
  let entering = 0;
  for (let box = 0; box < boxCount; box++) {
    const moving = boxes[box]! * leaving;
    boxes[box] = boxes[box]! - moving + entering;
    entering = moving;
  }
  return entering;
}

/** Keeps the share `survival` of every box; returns the number lost. */
export function thinAdults(boxes: Float64Array, survival: number): number {
  const before = adultsIn(boxes);
  for (let box = 0; box < boxCount; box++) boxes[box] = boxes[box]! * survival;
  return before * (1 - survival);
}
