/** OpenAPI 3.1 from the same zod schemas that check the requests. */
import swagger from '@fastify/swagger';
import type { FastifyInstance, FastifySchema } from 'fastify';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';

/** Must run before the routes are added; the document is served at /api/openapi.json. */
export async function describeApi(app: FastifyInstance, version: string): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'glasstide',
        description: 'Every write carries a header Idempotency-Key. Times are ISO 8601 with offset or Z.',
        version,
        license: { name: 'MIT', identifier: 'MIT' },
      },
    },
    transform: (route) => {
      const { schema, url } = jsonSchemaTransform(route);
      return { schema: { ...schema, ...asSent(schema, url, String(route.route.method)) }, url };
    },
  });
  const schema = { summary: 'This description of the API (OpenAPI 3.1)' };
  app.get('/api/openapi.json', { schema }, async () => app.swagger());
}

const keyHeader = {
  type: 'object',
  required: ['Idempotency-Key'],
  properties: { 'Idempotency-Key': { type: 'string', minLength: 1, maxLength: 200 } },
};

/** What hooks do before the schemas apply: a write needs its key, and the id of a record may be left out. */
function asSent(schema: FastifySchema, url: string, method: string): FastifySchema {
  if (method === 'GET') return {};
  const body = schema.body as { required?: string[] } | undefined;
  const idIsFilledIn = url.startsWith('/api/places/:place/') && body?.required !== undefined;
  const required = body?.required?.filter((field) => field !== 'id');
  return { headers: keyHeader, ...(idIsFilledIn ? { body: { ...body, required } } : {}) };
}
