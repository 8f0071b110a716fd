/** What the machine itself does to the running program: no room on the disk, nobody at the end of its pipes. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MqttClient } from 'mqtt';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../services/store/sqlite.ts';
import { boardMemory, connectBoard, openHouse, placeId, publish } from '../ingest/station.ts';
import { freePort } from '../store/influxServer.ts';
import { type ProcessOptions, type ServiceProcess, startProcess } from './serviceProcess.ts';

let folder: string;
let service: ServiceProcess;
let board: MqttClient;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-machine-'));
  await openHouse(join(folder, 'glasstide.sqlite')).close();
});
afterEach(async () => {
  await board.endAsync(true);
  await service.kill();
  rmSync(folder, { recursive: true });
});

async function begin(options: ProcessOptions, settings: Record<string, string> = {}): Promise<string> {
  const port = await freePort();
  const usual = { GLASSTIDE_DATA: folder, GLASSTIDE_HTTP_PORT: '0', GLASSTIDE_MQTT_PORT: String(port) };
  service = startProcess({ ...usual, ...settings }, options);
  const address = (await service.ready).replace('glasstide is at ', '');
  board = await connectBoard(port, { clientId: 'bench', clean: false, outgoingStore: boardMemory() });
  return address;
}

const firstMs = Date.parse('2026-05-01T00:00:00Z');
const send = (minute: number) => {
  const payload = JSON.stringify({ temperatureC: 18 + (minute % 50) / 10, time: firstMs + minute * 60_000 });
  return publish(board, `glasstide/${placeId}/readings/bench`, payload);
};

/** Minutes of the readings in the file, and how many messages were put aside. */
async function kept(): Promise<{ minutes: number[]; putAside: number }> {
  const store = openStore({ path: join(folder, 'glasstide.sqlite') });
  const readings = await store.readings.range(placeId, { fromMs: 0, toMs: 4e12 });
  const putAside = store.quarantine.waiting();
  await store.close();
  return { minutes: readings.map(({ timeMs }) => (timeMs - firstMs) / 60_000), putAside };
}

describe('a disk without room', () => {
  it('loses nothing that was acknowledged; the rest comes when there is room, and pages answer meanwhile', async () => {
    const address = await begin({ largestFileKB: 700 });
    let full = false;
    const whenFull = new Promise<void>((resolve) =>
      board.once('close', () => {
        full = true;
        resolve();
      }),
    );
    const acknowledged: number[] = [];
    const sendings: Promise<unknown>[] = [];
    for (let minute = 0; !full; minute += 1) {
      const sent = send(minute).then(() => acknowledged.push(minute));
      sendings.push(sent);
      await Promise.race([sent, whenFull]);
    }
    expect(acknowledged.length).toBeGreaterThan(20);
    expect(acknowledged.length).toBeLessThan(sendings.length);
    const answer = await fetch(
      `${address}api/places/${placeId}/readings?resolution=raw&from=2026-05-01T00:00:00Z`,
    );
    const { readings } = (await answer.json()) as { readings: unknown[] };
    expect([answer.status, readings.length]).toEqual([200, acknowledged.length]);
    service.makeRoom();
    await Promise.all(sendings);
    await service.stop();
    const { minutes, putAside } = await kept();
    expect(minutes).toEqual([...new Set(minutes)]);
    expect(minutes).toEqual(expect.arrayContaining(acknowledged.slice(0, -1)));
    // One that failed twice while the room came is put aside with its reason, never dropped.
    expect(minutes.length + putAside).toBe(sendings.length);
  }, 60_000);
});

describe('pipes that nobody reads any more', () => {
  it('cost the lines of the log and nothing else', async () => {
    const address = await begin({ pipeErrors: true }, { GLASSTIDE_LOG: 'info' });
    service.closePipes();
    for (let minute = 0; minute < 5; minute += 1) {
      expect((await fetch(`${address}api/health`)).status).toBe(200);
      await send(minute);
    }
    await service.stop();
    expect((await kept()).minutes).toEqual([0, 1, 2, 3, 4]);
  }, 60_000);
});
