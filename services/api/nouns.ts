/** The nouns of the record routes: path segment, kind in the store, schema of the data. */
import type { z } from 'zod';
import {
  dailyExtremes,
  leafCheck,
  order,
  planting,
  release,
  sensor,
  sighting,
  trap,
  trapCount,
  treatment,
} from '../model/index.ts';
import type { RecordData, RecordKind } from '../store/store.ts';

type NounKind = Exclude<RecordKind, 'place' | 'outlook'>;

export interface Noun {
  path: string;
  kind: NounKind;
  schema: z.ZodType<RecordData[NounKind]>;
  /** The field of the data that names the record. */
  idField: 'id' | 'day';
  title: string;
  /** Entered in a round: whoever is invited to count may add and mend it. */
  ofARound: boolean;
}

const roundKinds: readonly NounKind[] = ['trapCount', 'leafCheck', 'sighting', 'treatment', 'dailyExtremes'];

const noun = (
  path: string,
  kind: Noun['kind'],
  schema: Noun['schema'],
  title: string,
  idField: Noun['idField'] = 'id',
): Noun => ({ path, kind, schema, title, idField, ofARound: roundKinds.includes(kind) });

export const nouns: readonly Noun[] = [
  noun('plantings', 'planting', planting, 'plantings'),
  noun('sensors', 'sensor', sensor, 'sensors'),
  noun('traps', 'trap', trap, 'traps'),
  noun('trap-counts', 'trapCount', trapCount, 'trap counts'),
  noun('leaf-checks', 'leafCheck', leafCheck, 'leaf checks'),
  noun('sightings', 'sighting', sighting, 'sightings'),
  noun('releases', 'release', release, 'releases'),
  noun('orders', 'order', order, 'orders'),
  noun('treatments', 'treatment', treatment, 'treatments'),
  noun('daily-extremes', 'dailyExtremes', dailyExtremes, 'lowest and highest of a day', 'day'),
];
