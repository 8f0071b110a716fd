/** Wires the rooms together. The only reader of the environment and, beside the demo, the only maker of a clock. */
import { existsSync } from 'node:fs';
import { createServer } from 'node:https';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import cron from 'node-cron';
import { buildApp } from './api/app.ts';
import { createChanges } from './api/changes.ts';
import { createAsking } from './asking.ts';
import { type Clock, realClock } from './clock.ts';
import { type Config, settingsFrom, version } from './config.ts';
import { certificateOf, createDoors, moveServer } from './doors.ts';
import { startCompute } from './forecasting/compute.ts';
import { files } from './forecasting/files.ts';
import { createForecasting } from './forecasting/forecasting.ts';
import { startIngest } from './ingest/ingest.ts';
import { createWatch } from './metrics/watch.ts';
import { createOutdoor } from './outdoor/outdoor.ts';
import { dailyBackups, embeddedBroker, naming, thisMachine } from './starting.ts';
import { openInfluxStore, openStore } from './store/sqlite.ts';
import type { Store } from './store/store.ts';
import { startMqttChannel } from './warnings/channels/mqtt.ts';
import { createTelling } from './warnings/telling.ts';

export type { Config } from './config.ts';

export interface Service {
  httpPort: number;
  /** Of the embedded broker; absent with an external one. */
  mqttPort?: number;
  /** The same over TLS, with a certificate. */
  mqttTlsPort?: number;
  store: Store;
  /** Holds forecasts back while much is loaded at once; the answer lets go. */
  holdForecasts(): () => void;
  /** Resolves when no message is in hand and no forecast is pending. */
  settled(): Promise<void>;
  close(): Promise<void>;
}

/**
 * Starts the service: store, broker, ingest, forecasting, warnings, API and dashboard.
 * @throws an Error that names the setting, when a port is taken
 */
export async function start(config: Config, clock: Clock): Promise<Service> {
  const closers: (() => unknown)[] = [];
  const closeAll = async () => {
    for (const close of closers.splice(0).reverse()) await close();
  };
  try {
    return { ...(await startRooms(config, clock, (close) => closers.push(close))), close: closeAll };
  } catch (error) {
    await closeAll();
    throw error;
  }
}

/** Each room hands over how it is closed; they are closed in reverse, so that nothing outlives what it needs. */
async function startRooms(config: Config, clock: Clock, onClose: (close: () => unknown) => void) {
  const store = openStores(config);
  onClose(() => store.close());
  const changes = createChanges();
  const { url, share, clientId } = config.mqtt;
  const ingest = await startIngest({
    store,
    clock,
    onChange: changes.tell,
    ...(url !== undefined && { url }),
    ...(share !== undefined && { share }),
    ...(clientId !== undefined && { clientId }),
  });
  onClose(() => ingest.close());
  const doors = createDoors({ store, clock, config });
  const broker = url === undefined ? await embeddedBroker(config, doors, ingest.handle) : undefined;
  onClose(() => broker?.close());
  const ownUrl = `mqtt://${doors.ownLogin}@127.0.0.1:${broker?.port}`;
  const channel = await startMqttChannel({ url: url ?? ownUrl });
  onClose(() => channel.close());

  const publish = async (placeId: string) => {
    const issued = store.issued.latest(placeId);
    if (!issued) return;
    const open = store.warnings.list(placeId).filter(({ state }) => state === 'open');
    await channel.publish(placeId, issued.advice, open);
  };
  const telling = createTelling({
    store,
    clock,
    ...(config.mail && { mail: config.mail }),
    ...(config.address !== undefined && { address: config.address }),
    onMorning: (placeId) => asking.eachMorning(placeId),
    onWarnings: (placeId) => changes.tell({ placeId, what: 'warning' }),
  });
  onClose(() => telling.close());

  const faults = new Map<string, string>();
  const thread = startCompute();
  onClose(() => thread.close());
  const forecasting = createForecasting({
    store,
    clock,
    compute: thread.compute,
    onFault: (placeId, error) => {
      faults.set(placeId, `No new forecast for ${placeId}: ${textOf(error)}. The last one still stands.`);
    },
    onIssued: async ({ placeId, asOfMs }) => {
      faults.delete(placeId);
      changes.tell({ placeId, what: 'outcome' });
      // As of the forecast, not of now: a clock that runs fast must not make its dates look missed.
      await telling.look(placeId, asOfMs);
      await publish(placeId);
    },
  });
  onClose(() => forecasting.close());

  const asking = createAsking(clock, forecasting.request);
  changes.listen(({ placeId, what }) => {
    if (what === 'record') ingest.refreshMappings();
    if (what === 'warning') publish(placeId).catch(() => {});
    if (!store.records.get('place', placeId, placeId)) return;
    if (what === 'record') asking.afterEntry(placeId);
    if (what === 'reading') asking.afterReading(placeId);
  });
  const everyMinute = cron.schedule('* * * * *', () =>
    telling.tick().catch((error) => faults.set('telling', `No message left: ${textOf(error)}.`)),
  );
  onClose(() => everyMinute.destroy());

  const outdoor = createOutdoor({
    store,
    clock,
    onChange: (placeId, what) => changes.tell({ placeId, what }),
  });
  const outdoorEveryMinute = cron.schedule('* * * * *', () => outdoor.tick());
  onClose(async () => {
    await outdoorEveryMinute.destroy();
    await outdoor.idle();
  });

  const backups = dailyBackups(config, clock, onClose);
  const troubles = () => [
    ...store.troubles(),
    ...ingest.troubles(),
    ...doors.troubles(),
    ...telling.troubles(),
    ...outdoor.troubles(),
    ...faults.values(),
    ...[backups?.state().trouble ?? []].flat(),
  ];
  const watch = createWatch({
    store,
    clock,
    version,
    troubles,
    isLocked: () => !doors.access.isOpen(),
    turnedAway: doors.turnedAway,
    ...(backups && { backup: backups.state }),
    dataDir: config.dataDir,
  });
  changes.listen(({ what }) => watch.changed(what));

  const dashboardDir = builtDashboard();
  const certificate = certificateOf(config);
  const app = await buildApp({
    store,
    clock,
    changes,
    forecastNow: forecasting.now,
    reread: ingest.reread,
    season: files,
    access: doors.access,
    telling: {
      ...telling,
      tryMqtt: async (placeId) => {
        await publish(placeId);
        return channel.isConnected();
      },
    },
    outdoor,
    troubles,
    watch,
    demo: config.demo,
    secure: certificate !== undefined,
    ...(config.proxies !== undefined && { proxies: config.proxies }),
    ...(certificate && { createServer: (handler) => createServer(certificate, handler) }),
    version,
    log: config.log,
    ...(dashboardDir !== undefined && { dashboardDir }),
  });
  onClose(() => app.close());
  const httpPort = await naming('GLASSTIDE_HTTP_PORT', config.httpPort, async () => {
    await app.listen({ host: doors.hostFor(config.httpHost), port: config.httpPort });
    const address = app.server.address();
    return typeof address === 'object' && address ? address.port : config.httpPort;
  });
  doors.onMove(async () => {
    await moveServer(app.server, { host: config.httpHost, port: httpPort });
    await broker?.moveTo(config.mqtt.host ?? thisMachine);
  });

  return {
    store,
    httpPort,
    ...(broker && { mqttPort: broker.port }),
    ...(broker?.tlsPort !== undefined && { mqttTlsPort: broker.tlsPort }),
    holdForecasts: asking.hold,
    settled: async () => {
      await ingest.idle();
      await forecasting.idle();
      await doors.settled();
      await outdoor.idle();
    },
  };
}

function openStores({ dataDir, influxUrl: url }: Config): Store {
  const path = join(dataDir, 'glasstide.sqlite');
  return url === undefined ? openStore({ path }) : openInfluxStore({ path, url });
}

/** Only stores what comes from an external broker; several such processes may share it. Troubles go to `tell`. */
async function startIngestOnly(config: Config, clock: Clock, tell: (trouble: string) => void) {
  const { url, share, clientId } = config.mqtt;
  const store = openStores(config);
  const ingest = await startIngest({
    store,
    clock,
    onChange: ({ what }) => what === 'record' && ingest.refreshMappings(),
    ...(url !== undefined && { url }),
    ...(share !== undefined && { share }),
    ...(clientId !== undefined && { clientId }),
  });
  const everyMinute = cron.schedule('* * * * *', () => {
    // Sensors are set up in another process.
    ingest.refreshMappings();
    for (const trouble of [...store.troubles(), ...ingest.troubles()]) tell(trouble);
  });
  return {
    ready: ingest.ready,
    async close() {
      await everyMinute.destroy();
      await ingest.close();
      await store.close();
    },
  };
}

/** The folder `npm run build` made; undefined before a first build. */
function builtDashboard(): string | undefined {
  const folder = import.meta.url.endsWith('.ts') ? '../dist/dashboard/' : '../dashboard/';
  const path = fileURLToPath(new URL(folder, import.meta.url));
  return existsSync(join(path, 'index.html')) ? path : undefined;
}

function textOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

async function main(): Promise<void> {
  // Whoever read along may have gone: a line of the log is not worth the house.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
  const { config, clockStartMs } = settingsFrom(process.env);
  const clock = realClock(clockStartMs);
  const closeOnSignal = (close: () => Promise<void>) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void close());
  };
  if (config.only === 'ingest') {
    const ingest = await startIngestOnly(config, clock, (trouble) => process.stderr.write(`${trouble}\n`));
    closeOnSignal(ingest.close);
    await ingest.ready();
    process.stdout.write('glasstide stores messages\n');
    return;
  }
  const service = await start(config, clock);
  const shownHost = config.httpHost.includes(':') ? `[${config.httpHost}]` : config.httpHost;
  process.stdout.write(`glasstide is at http://${shownHost}:${service.httpPort}/\n`);
  closeOnSignal(service.close);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  main().catch((error) => {
    process.stderr.write(`${textOf(error)}\n`);
    process.exitCode = 1;
  });
}
