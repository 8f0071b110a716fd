/** Values of the season file: instants, days, names, counts. */
import { z } from 'zod';
import { enemyIds, leafKinds, pestIds, trapKinds } from './kinds.ts';

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
export const id = z.string().min(1).max(64);
export const pestId = z.enum(pestIds);
export const enemyId = z.enum(enemyIds);
export const trapKind = z.enum(trapKinds);
export const leafKind = z.enum(leafKinds);
export const count = z
  .number()
  .int({ error: 'send a whole number of insects' })
  .min(0, { error: 'send 0 or more' })
  .max(100_000, { error: 'send at most 100,000' });
export const share = z
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
