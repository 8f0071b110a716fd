/**
 * The service worker: keeps the built dashboard on the phone and answers every page from it, so that it opens without
 * signal. It never touches the API: entries and answers are the page's own business. The build fills in the files.
 */
import { listenForMessages, type PushWorker } from './push.ts';

interface Extendable extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
type Worker = PushWorker & {
  addEventListener(type: 'install' | 'activate', run: (event: Extendable) => void): void;
  addEventListener(type: 'fetch', run: (event: Fetching) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly location: Location;
};
declare const self: Worker;
declare const offlineFiles: { revision: string; paths: readonly string[] };

const prefix = 'glasstide-';
const own = prefix + offlineFiles.revision;

async function keepFiles(): Promise<void> {
  const cache = await caches.open(own);
  await cache.addAll(offlineFiles.paths.map((path) => new Request(path, { cache: 'no-cache' })));
  await self.skipWaiting();
}

/** Pages that are open still ask for the files of the version before: that one stays. */
async function dropOld(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== own);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** Every address of a page is the one page; pages that are open still ask for files of the version before. */
async function answer(request: Request): Promise<Response> {
  const page = request.mode === 'navigate';
  const kept = await (await caches.open(own)).match(page ? '/index.html' : request);
  return kept ?? (page ? undefined : await caches.match(request)) ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(keepFiles()));
self.addEventListener('activate', (event) => event.waitUntil(dropOld()));
self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url);
  const ours = origin === self.location.origin && !pathname.startsWith('/api/');
  if (ours && event.request.method === 'GET') event.respondWith(answer(event.request));
});
listenForMessages(self);
