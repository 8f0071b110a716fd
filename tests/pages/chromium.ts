/** Debian's Chromium as the page tests start it. */
import { execFileSync } from 'node:child_process';
import { type Browser, chromium } from 'playwright-core';

export function launchChromium(): Promise<Browser> {
  const executablePath = execFileSync('which', ['chromium'], { encoding: 'utf8' }).trim();
  return chromium.launch({
    executablePath,
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-dev-shm-usage',
    ],
  });
}
