/** What this phone keeps by itself, in IndexedDB: entries made without signal, and the last answers of the house. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Refused, Write } from '../api.ts';

export interface KeptEntry extends Write {
  key: string;
  /** What the person reads of it. */
  words: string;
  madeAtMs: number;
  /** Set when the house answered and would not take it; it stays until it is sent again or thrown away. */
  refused?: Refused;
  /** Given by the shelf; entries are sent in this order. */
  order?: number;
}
export interface KeptAnswer {
  data: unknown;
  atMs: number;
}
interface Shelf extends DBSchema {
  entries: { key: number; value: KeptEntry };
  answers: { key: string; value: KeptAnswer };
}

let opened: Promise<IDBPDatabase<Shelf>> | undefined;

/** Rejects where a browser keeps nothing, as in some private windows. */
export function shelf(): Promise<IDBPDatabase<Shelf>> {
  opened ??= openDB<Shelf>('glasstide', 1, {
    upgrade(database) {
      database.createObjectStore('entries', { keyPath: 'order', autoIncrement: true });
      database.createObjectStore('answers');
    },
  });
  return opened;
}
