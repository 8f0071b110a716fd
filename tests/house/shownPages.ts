/** The pages of the dashboard as its source names them. */
import { readFileSync } from 'node:fs';

const sources = ['dashboard/main.tsx', 'dashboard/pages/all.ts'];
const named = /^ {2}'(\/[\w/-]*)': \{ title: '([^']+)'/gm;

/** Titles by address. */
export const shownPages: ReadonlyMap<string, string> = new Map(
  sources
    .flatMap((path) => [...readFileSync(path, 'utf8').matchAll(named)])
    .map(([, address = '', title = '']) => [address, title]),
);
