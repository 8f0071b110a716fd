/** Shapes of the shopping list. */
import { z } from 'zod';
import { day, enemyId, order, pestId } from '../../model/index.ts';

const spending = z.object({
  seasonEnd: day,
  total: z.number(),
  totalToDate: z.number(),
  unpriced: z.int(),
});

export const shopping = z.object({
  parcels: z.array(
    z.object({
      orderBy: day,
      arrivesOn: day,
      items: z.array(
        z.object({
          enemy: enemyId,
          number: z.int(),
          words: z.string(),
          sum: z.object({ areaM2: z.number(), perM2: z.number() }).optional(),
          pests: z.array(pestId),
          waitsDays: z.int(),
          price: z.number().optional(),
        }),
      ),
      price: z.number().optional(),
      fee: z.number().optional(),
      spared: z.number().optional(),
      currency: z.string().optional(),
    }),
  ),
  onTheWay: z.array(order.extend({ words: z.string() })),
  prices: z.array(
    z.object({ enemy: enemyId, day, perAnimal: z.number(), from: z.enum(['order', 'supplier']) }),
  ),
  thisSeason: spending,
  lastSeason: spending,
  currency: z.string().optional(),
});
