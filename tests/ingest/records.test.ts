/** Trap counts and leaf checks by MQTT, through the real broker. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStation, placeId, type Station, startMs } from './station.ts';

const door = `glasstide/${placeId}/counts/door`;
const leaves = `glasstide/${placeId}/leaves`;
const count = {
  time: '2026-05-13T05:00:00Z',
  exposureDays: 7,
  counts: { whitefly: 14, aphid: { low: 1, high: 5 } },
};
let station: Station;

beforeEach(async () => {
  station = await openStation();
});
afterEach(() => station.close());

const counts = () => station.store.records.list('trapCount', placeId);

describe('a trap count', () => {
  it('is a record of the trap in its topic, with what was left out filled in', async () => {
    await station.publish(door, JSON.stringify(count));
    expect(counts()).toMatchObject([
      {
        version: 1,
        changedAtMs: startMs,
        data: { ...count, trapId: 'door', countedFraction: 1, card: 'new' },
      },
    ]);
    expect(station.changes).toEqual([{ placeId, what: 'record' }]);
  });

  it('counts once when it is sent twice', async () => {
    await station.publish(door, JSON.stringify(count));
    await station.publish(door, JSON.stringify(count));
    expect(counts()).toMatchObject([{ version: 1 }]);
    expect(station.changes).toHaveLength(1);
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toContain('known already');
  });

  it('sent again does not bring back what the owner deleted', async () => {
    await station.publish(door, JSON.stringify(count));
    const id = counts()[0]?.id ?? '';
    station.store.records.remove({ kind: 'trapCount', placeId, id, atMs: startMs });
    await station.publish(door, JSON.stringify(count));
    expect(counts()).toEqual([]);
  });

  it('with another figure for the same time is a new version of it', async () => {
    await station.publish(door, JSON.stringify(count));
    await station.publish(door, JSON.stringify({ ...count, counts: { whitefly: 15 } }));
    expect(counts()).toMatchObject([{ version: 2, data: { counts: { whitefly: 15 } } }]);
  });

  it('may bring its own id', async () => {
    await station.publish(door, JSON.stringify({ ...count, id: 'week-20' }));
    expect(counts()).toMatchObject([{ id: 'week-20' }]);
  });

  it('of the minute in which the trap was hung is taken', async () => {
    await station.publish(door, JSON.stringify({ ...count, time: '2026-05-01T06:00:00Z' }));
    expect(counts()).toHaveLength(1);
  });
});

describe('a leaf check', () => {
  const check = {
    time: '2026-05-13T05:10:00Z',
    leaves: 10,
    seen: [{ kind: 'whitefly-scale', infestedLeaves: 3 }],
  };

  it('is stored once', async () => {
    await station.publish(leaves, JSON.stringify(check));
    await station.publish(leaves, JSON.stringify(check));
    expect(station.store.records.list('leafCheck', placeId)).toMatchObject([{ version: 1, data: check }]);
  });

  it('of a planting that is not there is refused', async () => {
    await station.publish(leaves, JSON.stringify({ ...check, plantingId: 'peppers' }));
    expect(station.quarantine()).toMatchObject([{ code: 'reference-unknown' }]);
  });
});
