/**
 * Every input of a forecast as plain data: the season file (docs/data.md). Times are ISO 8601 with
 * an offset or Z; calendar days are YYYY-MM-DD in the place's own time zone.
 */
import { z } from 'zod';
import { enemyId, isCountedOnLeaves, leafKind, lookAlikes, pestId, pestIds, trapKind } from './kinds.ts';
import { dayMs } from './units.ts';

export * from './kinds.ts';

const firstYear = Date.UTC(2000, 0, 1);

/** An instant; refused before 2000, because boards without a set clock report 1970. */
export const instant = z.iso
  .datetime({ offset: true, error: 'send a date and time with its offset, such as 2026-05-13T06:10:00Z' })
  .refine((text) => Date.parse(text) >= firstYear, {
    error: 'send a time after the year 2000: the clock was not set',
  });
export const day = z.iso.date({ error: 'send a day as YYYY-MM-DD' });
export const slug = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,62}$/, { error: 'use lower-case letters, digits and hyphens' });
const id = z.string().min(1).max(64);
const count = z
  .number()
  .int({ error: 'send a whole number of insects' })
  .min(0, { error: 'send 0 or more' })
  .max(100_000, { error: 'send at most 100,000' });
const share = z
  .number()
  .gt(0, { error: 'send a share above 0' })
  .max(1, { error: 'send a share of at most 1' });

/** An exact number, or a band tapped on the phone: at least `low`, at most `high`. */
export const counted = z.union([
  count,
  z
    .strictObject({ low: count, high: count })
    .refine((band) => band.low <= band.high, { error: 'low must not exceed high' }),
]);
export type Counted = z.infer<typeof counted>;

/** ISO weekday, 1 = Monday. */
const weekday = z.int().min(1).max(7);

export const supplier = z.strictObject({
  /** Days from order to arrival at the earliest. */
  leadDays: z.int().min(0).max(60),
  /** Last local hour at which an order still counts for its day. */
  cutoffHour: z.int().min(0).max(24),
  orderWeekdays: z.array(weekday).min(1),
  deliveryWeekdays: z.array(weekday).min(1),
  currency: z.string().regex(/^[A-Z]{3}$/, { error: 'send an ISO 4217 currency such as EUR' }),
  parcelFee: z.number().min(0),
  /** Price of one animal, by natural enemy, in the same currency. */
  pricePerAnimal: z.partialRecord(enemyId, z.number().min(0)),
});
export type Supplier = z.infer<typeof supplier>;

const mostAwayDays = 366;
/** Local days on which nobody is there, both ends included. */
const awaySpan = z
  .strictObject({ from: day, to: day })
  .refine(({ from, to }) => from <= to, { error: 'send a last day not before the first', path: ['to'] })
  .refine(({ from, to }) => Date.parse(to) - Date.parse(from) < mostAwayDays * dayMs, {
    error: 'send a year at most',
    path: ['to'],
  });

export const place = z
  .strictObject({
    id: slug,
    name: z.string().min(1).max(80),
    kind: z.enum(['glasshouse', 'room', 'outdoors']),
    areaM2: z.number().gt(0).max(10_000),
    latitudeDeg: z.number().min(-90).max(90),
    longitudeDeg: z.number().min(-180).max(180),
    timeZone: z.string().refine(isTimeZone, { error: 'send an IANA time zone such as Europe/Paris' }),
    /** ISO 3166-1 alpha-2; decides which line about the law is shown. */
    country: z
      .string()
      .regex(/^[A-Z]{2}$/, { error: 'send two capital letters such as FR' })
      .optional(),
    pests: z.array(pestId),
    /**
     * The person's own limit that is still fine, by pest: catch per trap and week; of a pest counted on leaves
     * (`isCountedOnLeaves`), leaves with any of ten looked under.
     */
    limits: z.partialRecord(pestId, z.number().gt(0)),
    supplier: supplier.optional(),
    /** Parcels are planned past these days; counts and parcels that fall on them are told. */
    awayDays: z.array(awaySpan).max(100).optional(),
    /** Last local day of the growing season, month-day; after it nothing is advised. */
    seasonEnd: z
      .string()
      .regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, { error: 'send month and day such as 10-15' }),
  })
  .check(({ value, issues }) => {
    for (const { pests, why } of lookAlikes) {
      if (value.pests.filter((pest) => pests.includes(pest)).length > 1)
        issues.push({ code: 'custom', input: value.pests, path: ['pests'], message: why });
    }
    for (const pest of pestIds.filter((each) => isCountedOnLeaves(value, each))) {
      const message = 'send fewer than 10: the limit is in leaves with any, of ten looked under';
      if ((value.limits[pest] ?? 0) >= 10)
        issues.push({ code: 'custom', input: value.limits[pest], path: ['limits', pest], message });
    }
  });
export type Place = z.infer<typeof place>;

export const planting = z.strictObject({
  id,
  crop: z.string().min(1).max(60),
  plants: z.int().min(1).max(10_000),
  leafAreaM2: z.number().gt(0).optional(),
});
export type Planting = z.infer<typeof planting>;

const mostCorrectionC = 10;
const tooFarOff = { error: 'send -10 to 10 °C: a sensor that is further off is broken' };

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

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
