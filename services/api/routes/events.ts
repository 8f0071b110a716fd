import type { ServerResponse } from 'node:http';
import type { FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { callerNow } from '../callers.ts';
import type { ApiDeps } from '../deps.ts';
import { isoOf } from '../window.ts';

const heartbeatMs = 20_000;
const mostStreams = 200;
/** What a page has not fetched of the stream; one that lags further behind asks anew. */
const mostWaitingBytes = 256 * 1024;

/** Live pages are told what changed: server-sent events (WHATWG HTML, section 9.2). */
export const eventRoutes =
  ({ changes, access, store }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const open = new Map<ServerResponse, FastifyRequest>();
    const stopListening = changes.listen((change) => {
      for (const response of open.keys()) say(response, `event: change\ndata: ${JSON.stringify(change)}\n\n`);
    });
    // A comment now and then keeps proxies from closing a quiet stream.
    const heartbeat = setInterval(() => {
      endThoseSignedOut();
      for (const response of open.keys()) say(response, ': still here\n\n');
    }, heartbeatMs);
    heartbeat.unref();

    function say(response: ServerResponse, text: string): void {
      if (response.writableLength > mostWaitingBytes) response.destroy();
      else response.write(text);
    }
    function endThoseSignedOut(): void {
      for (const [response, request] of open) {
        if (callerNow(request, access).role === 'nobody') response.end();
      }
    }
    const stopWatching = access.onChange(endThoseSignedOut);

    app.get(
      '/events',
      {
        schema: {
          summary:
            'Live changes as server-sent events: event change, data { placeId, what }; first, event issued, data { placeId, issuedAt }',
        },
        // HEAD would run the handler below, which never ends an answer.
        exposeHeadRoute: false,
      },
      (request, reply) => {
        // The oldest of too many is most likely a page nobody looks at; a page that is open asks again.
        if (open.size >= mostStreams) open.keys().next().value?.end();
        reply.hijack();
        const response = reply.raw;
        response.writeHead(200, {
          'content-type': 'text/event-stream; charset=utf-8',
          'cache-control': 'no-store',
          'x-accel-buffering': 'no',
        });
        response.write('retry: 2000\n\n');
        // What came between the page's first answers and its stream, it would miss until the next.
        for (const { data } of store.records.places()) {
          const latest = store.issued.latest(data.id);
          if (!latest) continue;
          const issued = { placeId: data.id, issuedAt: isoOf(latest.asOfMs) };
          response.write(`event: issued\ndata: ${JSON.stringify(issued)}\n\n`);
        }
        open.set(response, request);
        request.raw.on('close', () => open.delete(response));
      },
    );

    app.addHook('preClose', async () => {
      stopListening();
      stopWatching();
      clearInterval(heartbeat);
      for (const response of open.keys()) response.end();
    });
  };
