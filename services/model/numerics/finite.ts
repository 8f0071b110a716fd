/** The number itself, or an error naming the quantity: nothing non-finite travels through the model. */
export function finite(value: number, quantity: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${quantity} must be a finite number, but is ${value}`);
  return value;
}
