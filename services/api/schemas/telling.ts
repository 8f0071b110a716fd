/** Shapes of how people are told. */
import { z } from 'zod';
import { instant } from './answers.ts';

const hour = z.int({ error: 'send an hour from 0 to 23' }).min(0).max(23);
const mailAddress = z.email({ error: 'send a mail address such as ada@example.org' }).max(200);

export const settings = z.strictObject({
  mailTo: z.array(mailAddress).max(10, { error: 'send at most 10 addresses' }),
  quietFromHour: hour,
  quietToHour: hour,
  letter: z.strictObject({ weekday: z.int().min(1).max(7), hour }).nullable(),
});

const base64url = z.string().regex(/^[\w-]{16,200}={0,2}$/, { error: 'send a key in base64url' });

/** A subscription as browsers give it (Push API). */
export const phone = z.strictObject({
  endpoint: z
    .url({ protocol: /^https$/, error: 'send the https address the browser gave' })
    .max(1000)
    .refine(isPublicName, { error: 'send the address of a push service' }),
  keys: z.strictObject({ p256dh: base64url, auth: base64url }),
  name: z.string().trim().min(1).max(60),
});

/** A push service has a public name; an address inside the house is none. */
function isPublicName(url: string): boolean {
  if (!URL.canParse(url)) return false;
  const { hostname } = new URL(url);
  return (
    /^[\w-]+(\.[\w-]+)*\.[a-z][a-z-]+$/i.test(hostname) &&
    !/\.(local|localhost|internal|lan|home)$/i.test(hostname)
  );
}

export const target = z.discriminatedUnion('channel', [
  z.strictObject({ channel: z.literal('mail'), to: mailAddress }),
  z.strictObject({ channel: z.literal('push'), to: z.string().max(64) }),
  z.strictObject({ channel: z.literal('mqtt') }),
]);

const channel = z.enum(['mail', 'push']);

export const telling = z.object({
  settings,
  canMail: z.boolean(),
  pushPublicKey: z.string(),
  phones: z.array(z.object({ id: z.string(), name: z.string(), addedAt: instant })),
  targets: z.array(
    z.object({
      channel,
      to: z.string(),
      waiting: z.int(),
      lastSentAt: instant.optional(),
      fault: z.string().optional(),
      nextTryAt: instant.optional(),
    }),
  ),
  settled: z.array(
    z.object({
      channel,
      to: z.string(),
      event: z.enum(['raised', 'withdrawn', 'letter']),
      about: z.string(),
      sent: z.boolean(),
      at: instant,
    }),
  ),
});
