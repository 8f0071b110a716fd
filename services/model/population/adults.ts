/**
 * Laying adults in six boxes of physiological age, each left at the rate 6 / life: life is gamma distributed with the
 * mean of the record at any temperature.
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

const moving = new Float64Array(boxCount);

/**
 * Ages the adults by `clock` units out of a mean life of `life` units; returns those who died of age. How many boxes one
 * moves on is Poisson distributed, so a step of any size is exact.
 */
export function ageAdults(boxes: Float64Array, clock: number, life: number): number {
  const mean = (boxCount * clock) / life;
  moving[0] = Math.exp(-mean);
  for (let k = 1; k < boxCount; k++) moving[k] = (moving[k - 1]! * mean) / k;
  const before = adultsIn(boxes);
  for (let box = boxCount - 1; box >= 0; box--) {
    let sum = 0;
    for (let k = 0; k <= box; k++) sum += moving[k]! * boxes[box - k]!;
    boxes[box] = sum;
  }
  return before - adultsIn(boxes);
}

/** Keeps the share `survival` of every box; returns the number lost. */
export function thinAdults(boxes: Float64Array, survival: number): number {
  const before = adultsIn(boxes);
  for (let box = 0; box < boxCount; box++) boxes[box] = boxes[box]! * survival;
  return before * (1 - survival);
}
