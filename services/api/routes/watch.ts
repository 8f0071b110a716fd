import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { ApiDeps } from '../deps.ts';
import { refused } from '../schemas/answers.ts';

const checks = z.object({
  checks: z.array(
    z.object({
      id: z.string(),
      title: z.string(),
      state: z.enum(['well', 'unsure', 'unwell']),
      says: z.string(),
    }),
  ),
});

/** Whether all is well, for people and for programs. */
export const watchRoutes =
  ({ watch }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    app.get(
      '/checks',
      { schema: { summary: 'Is all well? Point by point', response: { 200: checks, ...refused } } },
      async () => ({ checks: await watch.checks() }),
    );

    app.get(
      '/metrics',
      { schema: { summary: 'Numbers for whoever watches the service, as OpenMetrics text' } },
      async (_, reply) => {
        const { type, text } = await watch.metrics();
        return reply.type(type).send(text);
      },
    );
  };
