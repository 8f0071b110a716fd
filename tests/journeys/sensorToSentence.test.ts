/**
 * The main job, end to end: real processes, a real broker, a client that behaves like hardware, a kill -9
 * in the middle, and the sentence on the page of a real Chromium. All data are invented.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Advice, type Forecast, forecastAndAdvise, type Season } from '../../services/model/index.ts';
import { launchChromium } from '../pages/chromium.ts';
import { call, freePort, type RunningService, runService, type ServiceOptions } from './service.ts';

const minuteMs = 60_000;
const dayMs = 86_400_000;
const now = '2026-05-13T09:00:00Z';
const firstCatch = '2026-04-22T08:00:00.000Z';
const startMs = Date.parse('2026-04-01T09:00:00Z');
const readingCount = (42 * dayMs) / (15 * minuteMs);
const place = {
  id: 'pear-yard',
  name: 'The pear yard house',
  kind: 'glasshouse',
  areaM2: 12,
  latitudeDeg: 51,
  longitudeDeg: 0,
  timeZone: 'Europe/London',
  pests: ['trialeurodes-vaporariorum'],
  limits: { 'trialeurodes-vaporariorum': 30 },
  seasonEnd: '10-15',
  supplier: {
    leadDays: 2,
    cutoffHour: 12,
    orderWeekdays: [1, 2, 3, 4, 5],
    deliveryWeekdays: [3],
    currency: 'EUR',
    parcelFee: 6,
    pricePerAnimal: { 'encarsia-formosa': 0.1 },
  },
};

/** A saw-tooth day in UTC: 15 °C at midnight, 25 °C at noon, straight in between. */
const sawTooth = (timeMs: number): number => {
  const hour = (timeMs % dayMs) / 3_600_000;
  return hour <= 12 ? 15 + (10 * hour) / 12 : 25 - (10 * (hour - 12)) / 12;
};

let dataDir: string;
let options: ServiceOptions;
let service: RunningService;

beforeAll(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'glasstide-journey-'));
  options = { dataDir, httpPort: await freePort(), mqttPort: await freePort(), clockStart: now };
  service = await runService(options);
});
afterAll(async () => {
  await service.kill();
  rmSync(dataDir, { recursive: true, force: true });
});

describe('from sensor to sentence', () => {
  let season: Season;
  let forecast: Forecast;
  let advice: Advice;
  const acknowledged = new Set<number>();

  it('takes six weeks of readings and counts, with a kill -9 in between', async () => {
    await call(service.http, 'POST', '/api/places', place);
    await call(service.http, 'POST', '/api/places/pear-yard/traps', {
      id: 'door',
      name: 'by the door',
      hungAt: '2026-04-01T08:00:00Z',
    });
    const hardware = mqtt.connect(service.mqtt, {
      clientId: 'bench-board',
      clean: false,
      reconnectPeriod: 50,
    });
    const published: Promise<unknown>[] = [];
    const publish = (index: number) => {
      const timeMs = startMs + index * 15 * minuteMs;
      const payload = JSON.stringify({
        temperatureC: sawTooth(timeMs),
        time: new Date(timeMs).toISOString(),
      });
      const done = hardware
        .publishAsync('glasstide/pear-yard/readings/bench', payload, { qos: 1 })
        .then(() => acknowledged.add(timeMs));
      published.push(done);
      return done;
    };
    for (let index = 0; index < readingCount; index += 1) {
      const done = publish(index);
      if (index % 100 === 99) await done;
      // In mid-flight: the last hundred publishes are not all acknowledged when the process dies.
      if (index === 2050) {
        await service.kill('SIGKILL');
        service = await runService(options);
      }
    }
    await Promise.all(published);
    const catches = [0, 0, 3, 6, 9, 14];
    for (const [week, whitefly] of catches.entries()) {
      const time = new Date(startMs + (7 * (week + 1) * dayMs - 60 * minuteMs)).toISOString();
      const count = JSON.stringify({ time, exposureDays: 7, counts: { whitefly } });
      await hardware.publishAsync('glasstide/pear-yard/counts/door', count, { qos: 1 });
    }
    await hardware.endAsync();
    expect(acknowledged.size).toBe(readingCount);
  });

  it('has every acknowledged reading in the store exactly once', async () => {
    season = await call<Season>(service.http, 'GET', '/api/places/pear-yard/season');
    const times = season.readings.map((reading) => Date.parse(reading.time));
    expect(times.length).toBe(acknowledged.size);
    expect(new Set(times)).toEqual(acknowledged);
    expect(season.trapCounts.map((count) => count.counts.whitefly)).toEqual([0, 0, 3, 6, 9, 14]);
  });

  it('adds the degree-days up as by hand, to 0.1', async () => {
    ({ forecast, advice } = await call<{ forecast: Forecast; advice: Advice }>(
      service.http,
      'POST',
      '/api/places/pear-yard/outcome',
    ));
    const generation = forecast.ledger.find((entry) => entry.startedBy === 'first-catch');
    expect(generation?.startedAt).toBe(firstCatch);
    expect(generation?.lowerThresholdC).toBe(8.3);
    // By hand: each whole day gives 20 - 8.3 = 11.7; then the rise from 8:00 to the instant of the forecast,
    // the mean of its two ends less 8.3 times its share of a day.
    const firstMs = Date.parse(firstCatch);
    const asOfMs = Date.parse(forecast.asOf);
    const wholeDays = Math.floor((asOfMs - firstMs) / dayMs);
    const restMs = asOfMs - firstMs - wholeDays * dayMs;
    const rest = ((sawTooth(asOfMs) + sawTooth(firstMs)) / 2 - 8.3) * (restMs / dayMs);
    const byHand = wholeDays * 11.7 + rest;
    expect(Math.abs((generation?.soFarDegreeDays ?? 0) - byHand)).toBeLessThan(0.1);
  });

  it('has a forecast with ranges, and a warning with the day to order by', async () => {
    const [whitefly] = forecast.pests;
    expect(whitefly?.weeks.length).toBeGreaterThanOrEqual(4);
    for (const week of whitefly?.weeks ?? []) expect(week.count.q90).toBeGreaterThan(week.count.q10);
    expect(['order', 'top-up']).toContain(advice.decision);
    expect(advice.plan?.orderBy).toBe('2026-05-18');
    const { warnings } = await call<{ warnings: { rule: string; deadline: string; text: string }[] }>(
      service.http,
      'GET',
      '/api/places/pear-yard/warnings',
    );
    const orderBy = warnings.find((warning) => warning.rule === 'order-by');
    expect(orderBy?.deadline.slice(0, 10)).toBe('2026-05-18');
    expect(orderBy?.text).toContain('Mon 18 May');
  });

  it('says the sentence on the page', async () => {
    const browser = await launchChromium();
    try {
      const page = await browser.newPage({
        viewport: { width: 360, height: 800 },
        timezoneId: 'Europe/London',
        locale: 'en-GB',
      });
      await page.goto(service.http);
      const heading = page.locator('h1');
      await heading.filter({ hasText: 'Order' }).waitFor();
      expect(((await heading.textContent()) ?? '').replace(/\s+/g, ' ').trim()).toBe(advice.sentence);
    } finally {
      await browser.close();
    }
  });

  it('exports and imports to the same forecast, bit for bit', async () => {
    await call(service.http, 'POST', '/api/season?replace=true', season);
    const again = await call<Season>(service.http, 'GET', '/api/places/pear-yard/season');
    expect(again).toEqual(season);
    const outcome = (file: Season) => JSON.stringify(forecastAndAdvise(file, now));
    expect(outcome(again)).toBe(outcome(season));
  });
});
