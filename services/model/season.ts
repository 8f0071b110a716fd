/**
 * Every input of a forecast as plain data: the season file (docs/data.md). Times are ISO 8601 with
 * an offset or Z; calendar days are YYYY-MM-DD in the place's own time zone.
 */
import { z } from 'zod';
import { place } from './place.ts';
import { counted, day, enemyId, id, instant, leafKind, share, slug, trapKind } from './values.ts';

export * from './kinds.ts';
export * from './place.ts';
export * from './values.ts';

export const planting = z.strictObject({
  id,
  crop: z.string().min(1).max(60),
  plants: z.int().min(1).max(10_000),
  leafAreaM2: z.number().gt(0).optional(),
});
export type Planting = z.infer<typeof planting>;

export const mostCorrectionC = 10;
const tooFarOff = {
  error: `send -${mostCorrectionC} to ${mostCorrectionC} °C: a sensor that is further off is broken`,
};

/** Added to all readings of a sensor from a local day on, until the next correction. */
export const correction = z.strictObject({
  from: day,
  addC: z.number().min(-mostCorrectionC, tooFarOff).max(mostCorrectionC, tooFarOff),
});

export const sensor = z.strictObject({
  id: slug,
  name: z.string().min(1).max(80),
  unit: z.enum(['Cel', 'Far', 'K']).default('Cel'),
  /** Own topic filter when the board does not publish on glasstide topics. */
  topic: z.string().min(1).max(200).optional(),
  /** RFC 6901 pointers into a JSON payload. */
  pointers: z
    .strictObject({
      temperature: z.string().optional(),
      humidity: z.string().optional(),
      time: z.string().optional(),
    })
    .optional(),
  corrections: z
    .array(correction)
    .max(100)
    .refine((list) => new Set(list.map(({ from }) => from)).size === list.length, {
      error: 'send one correction for a day',
    })
    .optional(),
});
export type Sensor = z.infer<typeof sensor>;

export const reading = z.strictObject({
  sensorId: slug,
  time: instant,
  temperatureC: z.number(),
  humidityPct: z.number().optional(),
});
export type Reading = z.infer<typeof reading>;

/** Lowest and highest of one local day, read from a thermometer and typed in. */
export const dailyExtremes = z
  .strictObject({ day, minC: z.number().min(-60).max(60), maxC: z.number().min(-60).max(75) })
  .refine((d) => d.minC <= d.maxC, { error: 'the lowest must not exceed the highest', path: ['minC'] });
export type DailyExtremes = z.infer<typeof dailyExtremes>;

export const trap = z.strictObject({
  id: slug,
  name: z.string().min(1).max(80),
  hungAt: instant,
  takenDownAt: instant.optional(),
});
export type Trap = z.infer<typeof trap>;

export const trapCount = z
  .strictObject({
    id,
    trapId: slug,
    time: instant,
    exposureDays: z.number().gt(0, { error: 'send days above 0' }).max(60),
    countedFraction: share.default(1),
    /** `same`: the card hung on, so the earlier total is subtracted; `lost` and `down`: a gap, not a zero. */
    card: z.enum(['new', 'same', 'lost', 'down']).default('new'),
    counts: z.partialRecord(trapKind, counted),
    note: z.string().max(500).optional(),
  })
  .refine((c) => (c.card !== 'lost' && c.card !== 'down') || Object.keys(c.counts).length === 0, {
    error: 'a trap that was lost or down has no counts: leave them out',
    path: ['counts'],
  });
export type TrapCount = z.infer<typeof trapCount>;

export const leafSeen = z.strictObject({
  kind: leafKind,
  /** Leaves with at least one; left out when only a total was counted. */
  infestedLeaves: z.int().min(0).optional(),
  /** All of this kind on all leaves; left out when only presence was noted. */
  total: counted.optional(),
});

export const leafCheck = z
  .strictObject({
    id,
    time: instant,
    plantingId: id.optional(),
    leaves: z.int().min(1).max(1000),
    seen: z.array(leafSeen),
    note: z.string().max(500).optional(),
  })
  .refine((c) => c.seen.every((s) => (s.infestedLeaves ?? 0) <= c.leaves), {
    error: 'more infested leaves than leaves looked at',
    path: ['seen'],
  });
export type LeafCheck = z.infer<typeof leafCheck>;

export const sighting = z.strictObject({
  id,
  time: instant,
  what: z.string().min(1).max(80),
  note: z.string().max(500).optional(),
});

export const release = z.strictObject({
  id,
  enemy: enemyId,
  /** Stage as sold, in the words of the species record, such as `pupa on card`. */
  form: z.string().min(1).max(40),
  number: z.int().min(1).max(1_000_000),
  time: instant,
  /** Share that came alive. */
  aliveShare: share.default(1),
  price: z.number().min(0).optional(),
  note: z.string().max(500).optional(),
});
export type Release = z.infer<typeof release>;

export const order = z.strictObject({
  id,
  enemy: enemyId,
  number: z.int().min(1).max(1_000_000),
  orderedAt: instant,
  expectedOn: day.optional(),
  arrivedAt: instant.optional(),
  price: z.number().min(0).optional(),
});
export type Order = z.infer<typeof order>;

export const treatmentKinds = [
  'water-jet',
  'soap',
  'oil',
  'neem',
  'pyrethrins',
  'sulphur',
  'other-spray',
] as const;
export const treatment = z.strictObject({
  id,
  kind: z.enum(treatmentKinds),
  time: instant,
  /** Share of the plants that was reached. */
  coveredShare: share.default(0.8),
  note: z.string().max(500).optional(),
});
export type Treatment = z.infer<typeof treatment>;
export type TreatmentKind = Treatment['kind'];

/** Temperature expected inside, when somebody supplies one; otherwise the outlook is worked out. */
export const outlookPoint = z.strictObject({ time: instant, temperatureC: z.number() });

/** Air outdoors: measured, or where `issuedAt` stands, forecast at that instant. */
export const outdoorPoint = z.strictObject({
  time: instant,
  temperatureC: z.number().min(-60).max(60),
  issuedAt: instant.optional(),
});
export type OutdoorPoint = z.infer<typeof outdoorPoint>;

export const seasonSchema = z
  .strictObject({
    format: z.literal('glasstide-season'),
    version: z.literal(1),
    place,
    plantings: z.array(planting).default([]),
    sensors: z.array(sensor).default([]),
    readings: z.array(reading).default([]),
    dailyExtremes: z.array(dailyExtremes).default([]),
    traps: z.array(trap).default([]),
    trapCounts: z.array(trapCount).default([]),
    leafChecks: z.array(leafCheck).default([]),
    sightings: z.array(sighting).default([]),
    releases: z.array(release).default([]),
    orders: z.array(order).default([]),
    treatments: z.array(treatment).default([]),
    outlook: z.array(outlookPoint).default([]),
    outdoor: z.array(outdoorPoint).default([]),
  })
  .meta({ title: 'glasstide season file', description: 'All inputs of one place for one season.' });
export type Season = z.infer<typeof seasonSchema>;
