/** What the service worker does with a message from the house: shows it, and opens the page when it is touched. */
interface Pushed extends Event {
  readonly data: { json(): unknown } | null;
  waitUntil(done: Promise<unknown>): void;
}
interface Touched extends Event {
  readonly notification: Notification;
  waitUntil(done: Promise<unknown>): void;
}
interface OpenPage {
  readonly url: string;
  focus(): Promise<unknown>;
}
export interface PushWorker {
  addEventListener(type: 'push', run: (event: Pushed) => void): void;
  addEventListener(type: 'notificationclick', run: (event: Touched) => void): void;
  readonly registration: {
    showNotification(title: string, options: NotificationOptions): Promise<void>;
  };
  readonly clients: {
    matchAll(options: { type: 'window' }): Promise<readonly OpenPage[]>;
    openWindow(url: string): Promise<unknown>;
  };
}

export function listenForMessages(worker: PushWorker): void {
  worker.addEventListener('push', (event) => {
    const { title = 'glasstide', body = '' } = (event.data?.json() ?? {}) as {
      title?: string;
      body?: string;
    };
    // Without a tag: each message says only what is new, so none may take the place of an unread one.
    const shown = worker.registration.showNotification(title, { body, icon: '/icon-192.png' });
    event.waitUntil(shown);
  });
  worker.addEventListener('notificationclick', (event) => {
    event.notification.close();
    event.waitUntil(openPage(worker));
  });
}

async function openPage({ clients }: PushWorker): Promise<unknown> {
  const [open] = await clients.matchAll({ type: 'window' });
  return open ? open.focus() : clients.openWindow('/');
}
