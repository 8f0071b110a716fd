import type { ServerResponse } from 'node:http';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import type { ApiDeps } from '../deps.ts';

const heartbeatMs = 20_000;

/** Live pages are told what changed: server-sent events (WHATWG HTML, section 9.2). */
export const eventRoutes =
  ({ changes }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const open = new Set<ServerResponse>();
    const stopListening = changes.listen((change) => {
      for (const response of open) response.write(`event: change\ndata: ${JSON.stringify(change)}\n\n`);
    });
    // A comment now and then keeps proxies from closing a quiet stream.
    const heartbeat = setInterval(() => {
      for (const response of open) response.write(': still here\n\n');
    }, heartbeatMs);
    heartbeat.unref();

    app.get(
      '/events',
      {
        schema: { summary: 'Live changes as server-sent events: event change, data { placeId, what }' },
        // HEAD would run the handler below, which never ends an answer.
        exposeHeadRoute: false,
      },
      (request, reply) => {
        reply.hijack();
        const response = reply.raw;
        response.writeHead(200, {
          'content-type': 'text/event-stream; charset=utf-8',
          'cache-control': 'no-store',
          'x-accel-buffering': 'no',
        });
        response.write('retry: 2000\n\n');
        open.add(response);
        request.raw.on('close', () => open.delete(response));
      },
    );

    app.addHook('preClose', async () => {
      stopListening();
      clearInterval(heartbeat);
      for (const response of open) response.end();
    });
  };
