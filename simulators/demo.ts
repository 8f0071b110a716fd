/**
 * The demonstration: the real service with a clock of its own, twelve weeks of an invented garden
 * played into it, then time that moves on a quarter of an hour every two seconds.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Config, settingsFrom } from '../services/config.ts';
import { type Service, start } from '../services/main.ts';
import { quarterMs } from './garden.ts';
import { type GardenEvent, play } from './play.ts';
import { scenarioByName, shown } from './scenarios.ts';
import { connectSpeaker, type Speaker } from './speak.ts';

const dayMs = 86_400_000;
/** Of the last weeks the forecasts are kept as they would have been given, so that counts can be held against them. */
const forecastDays = 17;

export interface Demo {
  service: Service;
  url: string;
  placeId: string;
  /** Plays the next quarter of an hour; false when the season is over. */
  goOn(): Promise<boolean>;
  close(): Promise<void>;
}

/** Starts the service and plays the history; `say` receives one line of progress at a time. */
export async function startDemo(options: {
  scenario: string;
  seed: number;
  config: Config;
  say: (line: string) => void;
}): Promise<Demo> {
  const scenario = scenarioByName(options.scenario);
  let nowMs = Date.parse(scenario.startsAt);
  const service = await start(options.config, { nowMs: () => nowMs });
  const url = `http://${options.config.httpHost}:${service.httpPort}`;
  const speaker = await connectSpeaker({
    mqttUrl: options.config.mqtt.url ?? `mqtt://127.0.0.1:${service.mqttPort}`,
    httpUrl: url,
    placeId: scenario.place.id,
    writer: `${scenario.name}-${options.seed}`,
  });
  const story = tellUntil(play(scenario, options.seed), speaker, (atMs) => {
    nowMs = atMs;
  });

  const presentMs = Date.parse(scenario.presentAt);
  let letGo = service.holdForecasts();
  const workOut = async () => {
    options.say('Working out the forecast');
    letGo();
    await service.settled();
    letGo = service.holdForecasts();
  };
  for (let weekMs = nowMs; weekMs < presentMs; weekMs += dayMs * 7) {
    options.say(`Week of ${new Date(weekMs).toISOString().slice(0, 10)}`);
    await story(Math.min(weekMs + dayMs * 7, presentMs));
    await speaker.flush();
    const daysAgo = (presentMs - nowMs) / dayMs;
    if (daysAgo > 1 && daysAgo < forecastDays) await workOut();
  }
  await workOut();
  letGo();

  return {
    service,
    url,
    placeId: scenario.place.id,
    goOn: async () => {
      const more = await story(nowMs + quarterMs);
      await speaker.flush();
      return more;
    },
    close: async () => {
      await speaker.close();
      await service.close();
    },
  };
}

/** Delivers the events up to a moment, moving the clock before each; false when there are no more. */
function tellUntil(events: ReturnType<typeof play>, speaker: Speaker, setClock: (atMs: number) => void) {
  let next: IteratorResult<GardenEvent, void> = events.next();
  return async (untilMs: number): Promise<boolean> => {
    while (!next.done && next.value.atMs <= untilMs) {
      setClock(next.value.atMs);
      next = events.next(await speaker.deliver(next.value));
    }
    return !next.done;
  };
}

/** As set, or on any free port when nothing is set and another program has the usual one. */
async function startOnFreePorts(options: Parameters<typeof startDemo>[0]): Promise<Demo> {
  try {
    return await startDemo(options);
  } catch (error) {
    const chosen = process.env.GLASSTIDE_HTTP_PORT || process.env.GLASSTIDE_MQTT_PORT;
    if (chosen || !(error instanceof Error) || !/is taken/.test(error.message)) throw error;
    const { config } = options;
    options.say(`${error.message} Taking free ports instead.`);
    return startDemo({
      ...options,
      config: { ...config, httpPort: 0, mqtt: { ...config.mqtt, embeddedPort: 0 } },
    });
  }
}

async function main() {
  const { config: settings } = settingsFrom(process.env);
  const kept = process.env.GLASSTIDE_DATA;
  const dataDir = kept || mkdtempSync(join(tmpdir(), 'glasstide-demo-'));
  const say = (line: string) => process.stderr.write(`${line}\n`);
  let demo: Demo | undefined;
  let turn: Promise<unknown> = Promise.resolve();
  let timer: ReturnType<typeof setInterval> | undefined;
  const end = async (code: number) => {
    clearInterval(timer);
    await turn;
    await demo?.close();
    if (!kept) rmSync(dataDir, { recursive: true, force: true });
    process.exit(code);
  };
  const giveUp = (error: unknown) => {
    say(error instanceof Error ? error.message : String(error));
    turn = Promise.resolve();
    return end(1);
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void end(0));

  try {
    demo = await startOnFreePorts({ ...shown, config: { ...settings, dataDir, demo: true }, say });
  } catch (error) {
    return giveUp(error);
  }
  const { url, goOn } = demo;
  process.stdout.write(`${url}\n`);
  say('The garden lives on: a quarter of an hour every two seconds. Ctrl-C ends it.');
  timer = setInterval(() => {
    turn = turn.then(goOn).then((more) => {
      if (more) return;
      clearInterval(timer);
      say('The season is over. Ctrl-C ends the service.');
    }, giveUp);
  }, 2000);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await main();
