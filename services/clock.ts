/** Time as an argument. Only services/main.ts and simulators/demo.ts make a clock. */
export interface Clock {
  nowMs(): number;
}

/** The machine's clock, or, for practice and tests, one that starts at another instant and runs at its speed. */
export function realClock(startAtMs?: number): Clock {
  const shiftMs = startAtMs === undefined ? 0 : startAtMs - Date.now();
  return { nowMs: () => Date.now() + shiftMs };
}
