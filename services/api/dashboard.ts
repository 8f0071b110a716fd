/** Serves the built dashboard: its files, and its one page for every address of a page. */
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { refusals } from '../refusals.ts';
import type { ApiDeps } from './deps.ts';
import { nothingAt, refusalBody } from './errors.ts';

export async function serveDashboard(app: FastifyInstance, deps: ApiDeps): Promise<void> {
  const folder = deps.dashboardDir;
  if (folder !== undefined) {
    await app.register(fastifyStatic, {
      root: folder,
      setHeaders: keepHashedFiles,
      acceptRanges: false,
      preCompressed: true,
    });
  }
  app.addHook('onRequest', async (request, reply) => {
    if (asksForPage(request) && request.caller.role !== 'nobody') {
      reply.header('link', askedNext(request.url, deps));
    }
  });
  app.setNotFoundHandler((request, reply) => {
    if (folder !== undefined && asksForPage(request)) return reply.sendFile('index.html');
    return routeUnknown(request, reply);
  });
}

/**
 * What the page asks next, on its way while the script is (RFC 8288), where it would not be refused. Which of several
 * places is shown only the phone knows.
 */
function askedNext(address: string, { store }: ApiDeps): string {
  const [only, ...others] = store.records.places();
  const paths = ['/api/places'];
  if (address === '/' && only && others.length === 0) paths.push(`/api/places/${only.data.id}/outcome`);
  return paths.map((path) => `<${path}>; rel=preload; as=fetch; crossorigin`).join(', ');
}

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
