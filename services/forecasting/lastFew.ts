/** Things by name, of which only the last few are kept: what was longest not set anew is let go. */
export interface LastFew<Thing> {
  get(name: string): Thing | undefined;
  set(name: string, thing: Thing): void;
}

export function lastFew<Thing>(most: number): LastFew<Thing> {
  // A Map gives its names in the order in which they were put in.
  const kept = new Map<string, Thing>();
  return {
    get: (name) => kept.get(name),
    set(name, thing) {
      kept.delete(name);
      kept.set(name, thing);
      const [oldest] = kept.keys();
      if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    },
  };
}
