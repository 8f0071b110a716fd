/** Builds the HTTP side: the API under /api and the dashboard beside it. It never listens. */
import compress from '@fastify/compress';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler } from 'fastify-type-provider-zod';
import { knowCaller, letThrough, refuseOtherNames } from './callers.ts';
import { routeUnknown, serveDashboard } from './dashboard.ts';
import type { ApiDeps } from './deps.ts';
import { handleError, validate } from './errors.ts';
import { current } from './keeping.ts';
import { limitRequests } from './limits.ts';
import { logging } from './logging.ts';
import { describeApi } from './openapi.ts';
import { accessRoutes, calendarTokenRoutes } from './routes/access.ts';
import { eventRoutes } from './routes/events.ts';
import { healthRoutes } from './routes/health.ts';
import { outcomeRoutes } from './routes/outcome.ts';
import { outdoorRoutes } from './routes/outdoor.ts';
import { placeRoutes } from './routes/places.ts';
import { quarantineRoutes } from './routes/quarantine.ts';
import { readingRoutes } from './routes/readings.ts';
import { recordRoutes } from './routes/records.ts';
import { seasonRoutes } from './routes/season.ts';
import { seasonStoryRoutes } from './routes/seasonStory.ts';
import { shoppingRoutes } from './routes/shopping.ts';
import { calendarRoutes, tellingRoutes } from './routes/telling.ts';
import { warningRoutes } from './routes/warnings.ts';
import { watchRoutes } from './routes/watch.ts';
import { requireKey } from './writes.ts';

const largestRequestBytes = 1024 * 1024;
/** Who takes longer to send a request holds a connection for nothing. */
const longestRequestMs = 120_000;
const mostConnections = 500;
const roomsOfPlaces = [
  recordRoutes,
  readingRoutes,
  outcomeRoutes,
  warningRoutes,
  calendarTokenRoutes,
  tellingRoutes,
  shoppingRoutes,
  seasonStoryRoutes,
  outdoorRoutes,
];
const rooms = [
  healthRoutes,
  placeRoutes,
  seasonRoutes,
  quarantineRoutes,
  eventRoutes,
  accessRoutes,
  watchRoutes,
  calendarRoutes,
];

export async function buildApp(deps: ApiDeps): Promise<FastifyInstance> {
  const app = fastify({
    logger: logging(deps.log, deps.logStream),
    bodyLimit: largestRequestBytes,
    requestTimeout: longestRequestMs,
    ...(deps.proxies !== undefined && { trustProxy: deps.proxies }),
    ...(deps.createServer && { serverFactory: deps.createServer }),
    forceCloseConnections: true,
    // An address with a broken percent-encoding never reaches a route.
    frameworkErrors: (_error, request, reply) => routeUnknown(request, reply),
  });
  takeEmptyBodies(app);
  app.setValidatorCompiler(validate);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(handleError);
  app.server.maxConnections = mostConnections;
  app.addHook('onRequest', refuseOtherNames(deps));
  await app.register(helmet, safety);
  // A forecast is 90 kB of digits, a phone in the garden is slow. Browsers take other encodings over https only.
  await app.register(compress, { encodings: ['gzip'], globalDecompression: false });
  await app.register(cookie);
  knowCaller(app, deps);
  await limitRequests(app, deps);
  letThrough(app);
  app.addHook('onResponse', async ({ method }, { statusCode, elapsedTime }) => {
    deps.watch.answered({ method, statusCode, seconds: elapsedTime / 1000 });
  });
  await describeApi(app, deps.version);
  await app.register(api(deps), { prefix: '/api' });
  await serveDashboard(app, deps);
  await app.ready();
  return app;
}

/** Many clients name a media type on every write, also where there is nothing to send. */
function takeEmptyBodies(app: FastifyInstance): void {
  const parseJson = app.getDefaultJsonParser('error', 'error');
  app.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    if (body === '') done(null, undefined);
    else parseJson(request, String(body), done);
  });
}

const api = (deps: ApiDeps) => async (scope: FastifyInstance) => {
  scope.addHook('preParsing', requireKey);
  for (const room of rooms) await scope.register(room(deps));
  await scope.register(async (inside) => {
    inside.addHook('preValidation', async (request) => knownPlace(deps, request.params));
    for (const room of roomsOfPlaces) await inside.register(room(deps));
  });
};

/** Whatever belongs to a place is refused when there is no such place. */
function knownPlace({ store }: ApiDeps, params: unknown): void {
  const id = typeof params === 'object' && params !== null ? Reflect.get(params, 'place') : undefined;
  if (typeof id === 'string') current(store.records, { kind: 'place', placeId: id, id });
}

/** Only own scripts, styles, pictures. The service speaks plain HTTP at home: nothing here may force HTTPS. */
const safety = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      imgSrc: ["'self'", 'data:'],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  },
  strictTransportSecurity: false,
  crossOriginOpenerPolicy: false,
  originAgentCluster: false,
} as const;
