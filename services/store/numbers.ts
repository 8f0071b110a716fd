import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';

/** The small numbers that stand for places and sensors in the tall tables. */
export interface Numbers {
  /** Undefined for a place that never had a reading. */
  ofPlace(place: string): number | undefined;
  /** Makes the numbers when they are new; call within a transaction. */
  forSensor(place: string, sensor: string): { place: number; sensor: number };
}

export function openNumbers(db: Database, group: GroupCommit): Numbers {
  const known = new Map<string, { place: number; sensor: number }>();
  // A number made in a transaction that was rolled back does not exist.
  group.afterRollback(() => known.clear());

  const findPlace = db.prepare<[string], number>('select number from placeNumber where place = ?').pluck();
  const addPlace = db.prepare('insert into placeNumber (place) values (?)');
  const findSensor = db
    .prepare<[number, string], number>('select number from sensorNumber where place = ? and sensor = ?')
    .pluck();
  const addSensor = db.prepare('insert into sensorNumber (place, sensor) values (?, ?)');

  function make(place: string, sensor: string) {
    const placeNumber = findPlace.get(place) ?? Number(addPlace.run(place).lastInsertRowid);
    const sensorNumber =
      findSensor.get(placeNumber, sensor) ?? Number(addSensor.run(placeNumber, sensor).lastInsertRowid);
    return { place: placeNumber, sensor: sensorNumber };
  }

  return {
    ofPlace: (place) => findPlace.get(place),
    forSensor(place, sensor) {
      const key = JSON.stringify([place, sensor]);
      const numbers = known.get(key) ?? make(place, sensor);
      known.set(key, numbers);
      return numbers;
    },
  };
}
