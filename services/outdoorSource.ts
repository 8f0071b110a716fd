/** Where a forecast of the air outdoors comes from, as the owner sets it. */
import { z } from 'zod';

const pointer = z
  .string()
  .max(200)
  .regex(/^(\/.*)?$/, { error: 'start it with /, such as /hourly/time' });

export const outdoorSource = z.strictObject({
  url: z
    .url({ protocol: /^https?$/, error: 'send an address such as https://weather.example.org/forecast.json' })
    .max(2000)
    .refine((text) => !/^https?:\/\/[^/?#]*@/i.test(text), {
      error: 'leave name and password out of the address',
    }),
  pointers: z.strictObject({
    list: pointer.optional(),
    time: pointer,
    temperature: pointer,
  }),
  unit: z.enum(['Cel', 'Far', 'K']).default('Cel'),
});

/** What a page or a log may show of an address: keys stand in the query. */
export function shownAddress(url: string): string {
  const { protocol, host, pathname } = new URL(url);
  return `${protocol}//${host}${pathname}`;
}
