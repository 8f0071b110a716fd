/** Numbers for whoever watches the service, as OpenMetrics text (version 1.0.0). */
import {
  Counter,
  Gauge,
  Histogram,
  type OpenMetricsContentType,
  openMetricsContentType,
  Registry,
} from 'prom-client';
import type { Facts } from './checks.ts';

export interface Metrics {
  /** A request that was answered. */
  answered(request: { method: string; statusCode: number; seconds: number }): void;
  /** Something changed: a reading was stored, a message refused, a record kept, ... */
  changed(what: string): void;
  text(facts: Facts): Promise<{ type: string; text: string }>;
}

export function createMetrics({ version }: { version: string }): Metrics {
  const registry = new Registry<OpenMetricsContentType>();
  registry.setContentType(openMetricsContentType);
  const registers = [registry];
  const gauge = <L extends string>(name: string, help: string, labelNames: readonly L[] = []) =>
    new Gauge({ name, help, labelNames: [...labelNames], registers });

  gauge('glasstide_build', 'Always 1; the version stands in its label', ['version']).set({ version }, 1);
  const requests = new Counter({
    name: 'glasstide_http_requests',
    help: 'Requests answered',
    labelNames: ['method', 'status'] as const,
    registers,
  });
  const durations = new Histogram({
    name: 'glasstide_http_request_seconds',
    help: 'Time to answer a request',
    buckets: [0.005, 0.02, 0.1, 0.5, 2, 10],
    registers,
  });
  const changes = new Counter({
    name: 'glasstide_changes',
    help: 'Changes told to the pages: readings stored, messages refused, records, forecasts, warnings',
    labelNames: ['what'] as const,
    registers,
  });
  const memory = gauge('glasstide_memory_bytes', 'Resident memory of the process');
  const troubles = gauge('glasstide_troubles', 'Troubles that GET /api/health names');
  const waiting = gauge('glasstide_quarantine_waiting', 'Messages in quarantine that nobody has looked at');
  const turnedAway = gauge('glasstide_boards_turned_away', 'Boards turned away since the start');
  const sensorAge = gauge('glasstide_sensor_silence_seconds', 'Since the last reading', ['place', 'sensor']);
  const forecastAge = gauge('glasstide_forecast_age_seconds', 'Since the last forecast', ['place']);
  const backupAge = gauge('glasstide_backup_age_seconds', 'Since the last daily copy');
  const backups = gauge('glasstide_backups', 'Daily copies that are kept');
  const free = gauge('glasstide_disk_free_bytes', 'Room left where the database is');

  function take(facts: Facts): void {
    const age = (thenMs: number) => Math.max(0, facts.nowMs - thenMs) / 1000;
    for (const each of [sensorAge, forecastAge]) each.reset();
    // What is not known is left out: a reset would say 0.
    for (const each of [backupAge, free]) each.remove();
    memory.set(process.memoryUsage.rss());
    troubles.set(facts.troubles.length);
    waiting.set(facts.waiting);
    turnedAway.set(facts.turnedAway.total);
    for (const { id: place, forecastAtMs, sensors } of facts.places) {
      if (forecastAtMs !== undefined) forecastAge.set({ place }, age(forecastAtMs));
      for (const { id: sensor, lastMs } of sensors) {
        if (lastMs !== undefined) sensorAge.set({ place, sensor }, age(lastMs));
      }
    }
    if (facts.backup?.lastAtMs !== undefined) backupAge.set(age(facts.backup.lastAtMs));
    backups.set(facts.backup?.copies ?? 0);
    if (facts.disk) free.set(facts.disk.freeBytes);
  }

  return {
    answered({ method, statusCode, seconds }) {
      requests.inc({ method, status: `${Math.floor(statusCode / 100)}xx` });
      durations.observe(seconds);
    },
    changed: (what) => changes.inc({ what }),
    async text(facts) {
      take(facts);
      return { type: registry.contentType, text: await registry.metrics() };
    },
  };
}
