/** What is written together with readings: the page of arrivals, and deliveries without a time of their own. */
import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';
import type { Added, Arrival, Delivery, Noting, StoredReading } from './store.ts';

const keptArrivals = 200;
/** A board that comes back later than this sends its reading as a new one. */
const keptDeliveryMs = 24 * 3_600_000;

export interface Notes {
  /** Within a transaction: adds one line to the page of arrivals. */
  arrival(arrival: Arrival): void;
  /** Within a transaction: stores by `store` unless the delivery was stored before, and notes both. */
  around(
    placeId: string,
    noting: Noting | undefined,
    readings: readonly StoredReading[],
    store: () => Added,
  ): Added;
}

export function openNotes(db: Database, group: GroupCommit): Notes {
  const insert = db.prepare(`
    insert into arrival
    select @placeId, coalesce(max(number), 0) + 1, @topic, @arrivedMs, @payloadStart, @readAs
    from arrival where place = @placeId`);
  const dropArrivals = db.prepare(`
    delete from arrival
    where place = @placeId and number <= (select max(number) from arrival where place = @placeId) - ${keptArrivals}`);
  const delivered = db
    .prepare<[object], string>(`
      select content from delivery
      where sender = @sender and packet = @packetId and place = @placeId and sensor = @sensorId`)
    .pluck();
  const keepDelivery = db.prepare(
    'insert or replace into delivery values (@sender, @packetId, @placeId, @sensorId, @content, @arrivedMs)',
  );
  const dropDeliveries = db.prepare('delete from delivery where arrivedMs < ?');

  const grown = new Set<string>();
  let latestDeliveryMs: number | undefined;
  // Old ones are let go once a transaction, which may hold hundreds of new ones.
  group.beforeCommit(() => {
    for (const placeId of grown) dropArrivals.run({ placeId });
    grown.clear();
    if (latestDeliveryMs !== undefined) dropDeliveries.run(latestDeliveryMs - keptDeliveryMs);
    latestDeliveryMs = undefined;
  });

  function arrival(line: Arrival): void {
    insert.run(line);
    grown.add(line.placeId);
  }

  function isKnown(placeId: string, { sender, packetId, sensorId, content, again }: Delivery): boolean {
    return again && delivered.get({ sender, packetId, placeId, sensorId }) === content;
  }

  function keep(placeId: string, { again: _, ...delivery }: Delivery): void {
    keepDelivery.run({ placeId, ...delivery });
    latestDeliveryMs = delivery.arrivedMs;
  }

  return {
    arrival,
    around(placeId, noting, readings, store) {
      const delivery = noting?.delivery;
      const known = delivery !== undefined && isKnown(placeId, delivery);
      const added = known ? addedBefore(readings) : store();
      if (delivery && !known) keep(placeId, delivery);
      if (noting) arrival(noting.arrival(added));
      return added;
    },
  };
}

function addedBefore(readings: readonly StoredReading[]): Added {
  return { stored: 0, duplicates: readings.length, conflicts: [], deliveredBefore: true };
}
