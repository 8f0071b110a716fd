/** Makes the dashboard open without signal, where the browser allows it: over https, or on the machine itself. */
export function installWorker(): void {
  if ('serviceWorker' in navigator) navigator.serviceWorker.register('/worker.js').catch(() => undefined);
}
