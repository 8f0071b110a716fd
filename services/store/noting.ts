/** What is written together with readings: the page of arrivals, and deliveries without a time of their own. */
import type { Database } from 'better-sqlite3';
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

export function openNotes(db: Database): Notes {
  const lastNumber = db.prepare<[string], number>('select max(number) from arrival where place = ?').pluck();
  const insert = db.prepare(
    'insert into arrival values (@placeId, @number, @topic, @arrivedMs, @payloadStart, @readAs)',
  );
  const dropOld = db.prepare('delete from arrival where place = ? and number <= ?');
  const delivered = db
    .prepare<[object], string>(`
      select content from delivery
      where sender = @sender and packet = @packetId and place = @placeId and sensor = @sensorId`)
    .pluck();
  const keepDelivery = db.prepare(
    'insert or replace into delivery values (@sender, @packetId, @placeId, @sensorId, @content, @arrivedMs)',
  );
  const dropDeliveries = db.prepare('delete from delivery where arrivedMs < ?');

  function arrival(line: Arrival): void {
    const number = (lastNumber.get(line.placeId) ?? 0) + 1;
    insert.run({ ...line, number });
    dropOld.run(line.placeId, number - keptArrivals);
  }

  function isKnown(placeId: string, { sender, packetId, sensorId, content, again }: Delivery): boolean {
    return again && delivered.get({ sender, packetId, placeId, sensorId }) === content;
  }

  function keep(placeId: string, { again: _, ...delivery }: Delivery): void {
    keepDelivery.run({ placeId, ...delivery });
    dropDeliveries.run(delivery.arrivedMs - keptDeliveryMs);
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
