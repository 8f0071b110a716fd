/** Who wants to know is told what changed: live pages, and the wiring that asks for new forecasts. */
export interface Change {
  placeId: string;
  what: 'reading' | 'record' | 'outcome' | 'quarantine' | 'warning';
}

export interface Changes {
  tell(change: Change): void;
  /** Returns the function that ends the listening. */
  listen(listener: (change: Change) => void): () => void;
}

export function createChanges(): Changes {
  const listeners = new Set<(change: Change) => void>();
  return {
    tell: (change) => {
      for (const listener of listeners) listener(change);
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
