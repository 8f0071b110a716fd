/** What was noted of ants: sightings whose words name them. */
import type { Season } from '../season.ts';
import { dayMs } from '../units.ts';

const believedMs = 28 * dayMs;
/** "No ants", "no more ants", "ants are gone", "the ants have left". */
const noAnts = /\bno( more)? ants?\b|\bants? (are |were |have )?(all )?(gone|left|away)\b/i;

/** Whether ants were about at an instant: by the last note on them, four weeks old at most. */
export function antsAt(sightings: Season['sightings'], atMs: number): 'seen' | 'none' | 'nobody looked' {
  let last: { timeMs: number; what: string } | undefined;
  for (const { time, what } of sightings) {
    const timeMs = Date.parse(time);
    if (!/\bants?\b/i.test(what) || timeMs > atMs || atMs - timeMs >= believedMs) continue;
    if (!last || timeMs >= last.timeMs) last = { timeMs, what };
  }
  if (!last) return 'nobody looked';
  return noAnts.test(last.what) ? 'none' : 'seen';
}

/** 1 on the days from `startMs` on at whose end ants were about. */
export function antDays(sightings: Season['sightings'], startMs: number, days: number): Uint8Array {
  if (!sightings.some(({ what }) => /\bants?\b/i.test(what))) return new Uint8Array(days);
  return Uint8Array.from({ length: days }, (_, day) =>
    antsAt(sightings, startMs + (day + 1) * dayMs) === 'seen' ? 1 : 0,
  );
}
