import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import type { ApiDeps } from '../deps.ts';
import { health, refused } from '../schemas/answers.ts';

/** Whether the service is well; if not, sentences that say what to do. */
export const healthRoutes =
  ({ clock, troubles, demo, version }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const schema = { summary: 'Is the service well?', response: { 200: health, ...refused } };
    app.get('/health', { schema }, async () => {
      const reasons = troubles();
      const status = reasons.length === 0 ? ('well' as const) : ('unwell' as const);
      return { status, reasons, now: new Date(clock.nowMs()).toISOString(), demo, version };
    });
  };
