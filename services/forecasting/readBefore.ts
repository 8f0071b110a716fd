/**
 * Counts read for the last forecast of each place: the next one goes on from there, and without them reads them again.
 * Kept as bytes, so that what they take is known: a megabyte for each pest of a place that counts weekly.
 */
import { totalmem } from 'node:os';
import { deserialize, serialize } from 'node:v8';
import type { Fit } from '../model/index.ts';

export interface ReadBefore {
  get(placeId: string): Fit['read'] | undefined;
  set(placeId: string, read: Fit['read']): void;
}

/** What was longest not set anew is let go, a place that was deleted too. */
export function openReadBefore(mostBytes: number = aTenthOfMemory()): ReadBefore {
  // A Map gives its names in the order in which they were put in.
  const kept = new Map<string, Buffer>();
  let bytes = 0;

  function letGo(placeId: string): void {
    bytes -= kept.get(placeId)?.length ?? 0;
    kept.delete(placeId);
  }

  return {
    get(placeId) {
      const read = kept.get(placeId);
      return read && deserialize(read);
    },
    set(placeId, read) {
      letGo(placeId);
      const added = serialize(read);
      kept.set(placeId, added);
      bytes += added.length;
      for (const oldest of kept.keys()) {
        if (bytes <= mostBytes) return;
        letGo(oldest);
      }
    },
  };
}

/** Of the machine, or of the share of it that systemd or a container allows. */
const aTenthOfMemory = (): number => Math.min(totalmem(), process.constrainedMemory() || Infinity) / 10;
