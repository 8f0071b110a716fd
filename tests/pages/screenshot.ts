/** Makes the README's picture from the demo: `npm run build && npm run screenshot`. */
import { spawn } from 'node:child_process';
import { launchChromium } from './chromium.ts';

const demo = spawn(process.execPath, ['dist/simulators/demo.js'], { stdio: ['ignore', 'pipe', 'inherit'] });
const address = await new Promise<string>((resolve, reject) => {
  demo.stdout.on('data', (chunk: Buffer) => {
    const found = /http:\/\/[\d.]+:\d+\/?/.exec(chunk.toString());
    if (found) resolve(found[0]);
  });
  demo.once('exit', (code) => reject(new Error(`the demo ended (${code}) before it named its address`)));
});
const browser = await launchChromium();
try {
  const page = await browser.newPage({
    viewport: { width: 1280, height: 1000 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    reducedMotion: 'reduce',
  });
  await page.goto(address);
  await page.locator('h1').waitFor();
  await page.locator('canvas').first().waitFor();
  await page.screenshot({ path: 'docs/this-week.png' });
} finally {
  await browser.close();
  demo.kill();
}
