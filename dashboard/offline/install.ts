/** Makes the dashboard open without signal, where the browser allows it: over https, or on the machine itself. */
export function installWorker(): void {
  if (!('serviceWorker' in navigator)) return;
  // The first load belongs to the page; its files are kept afterwards.
  addEventListener('load', () => {
    navigator.serviceWorker.register('/worker.js').catch(() => undefined);
  });
}
