/** A diary read to the real warnings: rules, outbox, quiet hours and letter, by a clock set by hand. */
import type { Season } from '../services/model/index.ts';
import { openStore } from '../services/store/sqlite.ts';
import type {
  OutboxEntry,
  RecordData,
  RecordKind,
  Store,
  StoredReading,
  Warning,
} from '../services/store/store.ts';
import { askForLetter, type Channels, deliver } from '../services/warnings/delivery.ts';
import type { Message } from '../services/warnings/message.ts';
import { isDue } from '../services/warnings/schedule.ts';
import { defaultSettings } from '../services/warnings/timing.ts';
import { updateWarnings } from '../services/warnings/warnings.ts';
import { startGarden } from '../simulators/startGarden.ts';
import { type Diary, scenarioOf } from './warningSeason.ts';

/** One thing that left, in the message it left with. */
export interface Left {
  atMs: number;
  channel: OutboxEntry['channel'];
  event: OutboxEntry['event'];
  /** Which raising of a warning, or the day of the letter. */
  about: string;
}
export interface Told {
  left: Left[];
  warnings: Warning[];
  messages: { atMs: number; channel: OutboxEntry['channel']; message: Message }[];
}

const hourMs = 3_600_000;
/** The service looks every minute; from the start at nine, or ten in summer, this meets the end of the quiet hours. */
const stepMs = 3 * hourMs;
const mail = 'grower@example.org';
const settings = { ...defaultSettings, mailTo: [mail] };

/** What a grower with a mail address and a phone was told in the season, hour by hour. */
export async function tellDiary(diary: Diary): Promise<Told> {
  const store = openStore({ path: ':memory:' });
  const { season, issued, task } = diary;
  const { place } = season;
  const messages: Told['messages'] = [];
  let nowMs = 0;
  const channels: Channels = {
    async send(_place, { channel }, message) {
      messages.push({ atMs: nowMs, channel, message });
    },
  };
  const entries = [...entriesOf(season)].sort((a, b) => a.atMs - b.atMs);
  const readings = readingsOf(diary);
  const coming = [...issued];
  const startMs = Date.parse(scenarioOf(task).startsAt);
  const endMs = issued.at(-1)!.asOfMs + hourMs;
  for (nowMs = startMs; nowMs <= endMs; nowMs += stepMs) {
    for (; entries[0] && entries[0].atMs <= nowMs; entries.shift()) enter(store, place.id, entries[0]);
    for (let ms = nowMs - stepMs + hourMs; ms <= nowMs; ms += hourMs)
      await store.readings.add(place.id, readings.get(ms) ?? []);
    if (nowMs === startMs) follow(store, place.id);
    for (; coming[0] && coming[0].asOfMs <= nowMs; coming.shift())
      store.issued.keep({ placeId: place.id, ...coming[0] });
    const { letter } = settings;
    const due = isDue(store.telling.jobs, place.id, { name: 'letter', ...letter! }, place.timeZone, nowMs);
    await updateWarnings(store, place.id, nowMs);
    if (due) askForLetter(store, place.id, new Date(due.dueMs).toISOString().slice(0, 10), nowMs);
    due?.done();
    await deliver(store, place.id, channels, nowMs);
  }
  const left = store.telling.outbox.settled(place.id, 100_000).flatMap((entry) => leftOf(entry));
  const warnings = store.warnings.list(place.id);
  await store.close();
  return { left: left.reverse(), warnings, messages };
}

const leftOf = ({ state, settledMs, channel, event, about }: OutboxEntry): Left[] =>
  state === 'sent' && settledMs !== undefined ? [{ atMs: settledMs, channel, event, about }] : [];

function follow(store: Store, placeId: string): void {
  store.telling.keepSettings(placeId, settings);
  const phone = { placeId, id: 'phone', endpoint: 'https://push.example.org/1', p256dh: 'a', auth: 'b' };
  store.telling.phones.save({ ...phone, name: 'phone', addedMs: 0 });
}

interface Entry<K extends RecordKind = RecordKind> {
  atMs: number;
  kind: K;
  id: string;
  data: RecordData[K];
}

function enter(store: Store, placeId: string, { kind, id, data, atMs }: Entry): void {
  store.records.put({ kind, placeId, id, data, atMs });
}

/** What was set up at the start, and each entry at its time; an order twice, when made and when it came. */
function entriesOf({ place, plantings, sensors, traps, orders, ...season }: Season): Entry[] {
  const begun = <K extends RecordKind>(kind: K, data: RecordData[K] & { id: string }): Entry<K> => ({
    atMs: 0,
    kind,
    id: data.id,
    data,
  });
  const timed = <K extends RecordKind>(kind: K, data: RecordData[K] & { id: string; time: string }) => ({
    ...begun(kind, data),
    atMs: Date.parse(data.time),
  });
  const ordered = ({ arrivedAt, ...order }: RecordData['order']) => [
    { ...begun('order', order), atMs: Date.parse(order.orderedAt) },
    ...(arrivedAt === undefined
      ? []
      : [{ ...begun('order', { ...order, arrivedAt }), atMs: Date.parse(arrivedAt) }]),
  ];
  return [
    begun('place', place),
    ...plantings.map((data) => begun('planting', data)),
    ...sensors.map((data) => begun('sensor', data)),
    ...traps.map((data) => begun('trap', data)),
    ...season.trapCounts.map((data) => timed('trapCount', data)),
    ...season.leafChecks.map((data) => timed('leafCheck', data)),
    ...season.releases.map((data) => timed('release', data)),
    ...season.treatments.map((data) => timed('treatment', data)),
    ...orders.flatMap(ordered),
  ];
}

/** By the hour. The house is as warm whatever is set out in it: the garden gives the readings again. */
function readingsOf({ task, weeks }: Diary): Map<number, StoredReading[]> {
  const garden = startGarden(scenarioOf(task), task.seed);
  while (garden.week() < weeks) garden.advanceWeek();
  const byHour = new Map<number, StoredReading[]>();
  for (const { time, sensorId, temperatureC } of garden.season().readings) {
    const timeMs = Date.parse(time);
    byHour.set(timeMs, [...(byHour.get(timeMs) ?? []), { sensorId, timeMs, temperatureC }]);
  }
  return byHour;
}
