/** When a new forecast is asked for: after every entry, after readings at most once an hour, each morning. */
import type { Clock } from './clock.ts';

const hourMs = 3_600_000;

export interface Asking {
  afterEntry(placeId: string): void;
  /** Readings come every minute; one hour of them changes little. */
  afterReading(placeId: string): void;
  /** It is five in the morning at this place. */
  eachMorning(placeId: string): void;
  /** Holds all of this back while much is loaded at once; the answer lets go and asks once for each place. */
  hold(): () => void;
}

export function createAsking(clock: Clock, request: (placeId: string) => void): Asking {
  const lastHour = new Map<string, number>();
  let held: Set<string> | undefined;
  const ask = (placeId: string) => {
    lastHour.set(placeId, hourNow());
    if (held) held.add(placeId);
    else request(placeId);
  };
  const hourNow = () => Math.floor(clock.nowMs() / hourMs);
  return {
    afterEntry: ask,
    afterReading: (placeId) => {
      if (lastHour.get(placeId) !== hourNow()) ask(placeId);
    },
    eachMorning: ask,
    hold: () => {
      held = new Set();
      return () => {
        const places = held ?? [];
        held = undefined;
        for (const placeId of places) ask(placeId);
      };
    },
  };
}
