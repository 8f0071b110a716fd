/** A place and its supplier, as plain data of the season file (docs/data.md). */
import { z } from 'zod';
import { isCountedOnLeaves, lookAlikes, pestIds } from './kinds.ts';
import { dayMs } from './units.ts';
import { day, enemyId, pestId, slug } from './values.ts';

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

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
