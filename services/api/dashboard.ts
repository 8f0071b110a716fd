/** Serves the built dashboard: its files, and its one page for every address of a page. */
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { refusals } from '../refusals.ts';
import { nothingAt, refusalBody } from './errors.ts';

export async function serveDashboard(app: FastifyInstance, folder: string | undefined): Promise<void> {
  if (folder !== undefined) {
    await app.register(fastifyStatic, {
      root: folder,
      setHeaders: keepHashedFiles,
      acceptRanges: false,
      preCompressed: true,
    });
  }
  app.addHook('onRequest', async (request, reply) => {
    if (asksForPage(request) && request.caller.role !== 'nobody') reply.header('link', placesAhead);
  });
  app.setNotFoundHandler((request, reply) => {
    if (folder !== undefined && asksForPage(request)) return reply.sendFile('index.html');
    return routeUnknown(request, reply);
  });
}

/** What every page asks next, on its way while the script is (RFC 8288): not where it would be refused. */
const placesAhead = '</api/places>; rel=preload; as=fetch; crossorigin';

/** File names in assets carry a hash of their content, so a browser may keep them; the page itself may change. */
function keepHashedFiles(response: { setHeader(name: string, value: string): void }, path: string): void {
  const hashed = /[\\/]assets[\\/]/.test(path);
  response.setHeader('cache-control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
}

function asksForPage({ method, url, headers }: FastifyRequest): boolean {
  return method === 'GET' && !url.startsWith('/api') && (headers.accept ?? '').includes('text/html');
}

export function routeUnknown(request: FastifyRequest, reply: FastifyReply) {
  return reply.code(refusals['route-unknown'].status).send(refusalBody(nothingAt(request)));
}
