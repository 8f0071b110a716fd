import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openHouse } from './house.ts';

type Operation = {
  summary?: string;
  parameters?: { in: string; name: string; required?: boolean }[];
} & Record<string, unknown>;
let house: Awaited<ReturnType<typeof openHouse>>;
let paths: Record<string, Record<string, Operation>>;
let document: Record<string, unknown>;

beforeAll(async () => {
  house = await openHouse();
  document = (await house.app.inject('/api/openapi.json')).json();
  paths = document.paths as typeof paths;
});
afterAll(() => house.close());

const described = () =>
  Object.entries(paths).flatMap(([path, operations]) =>
    Object.keys(operations).map((method) => `${method.toUpperCase()} ${path}`),
  );

/** Routes as the router itself prints them (a tree, four columns a level), parameters as OpenAPI writes them. */
function served(): string[] {
  const above: string[] = [];
  return house.app
    .printRoutes({ commonPrefix: false })
    .split('\n')
    .flatMap((line) => {
      const [, branch = '', part = '', methods = ''] = /^(.*?[├└]── )(\S+) \((.+)\)$/.exec(line) ?? [];
      const depth = branch.length / 4;
      above.splice(depth - 1, above.length, part);
      const url = above.join('').replace(/:(\w+)/g, '{$1}');
      const own = methods.split(', ').filter((method) => method !== 'HEAD' && method !== '');
      return own.map((method) => `${method} ${url}`);
    })
    .filter((route) => route.includes(' /api/'));
}

// OpenAPI Specification 3.1.0: sections 4.8.1 (document), 4.8.2 (info), 4.8.10 (operation), 4.8.12 (parameter).
describe('the OpenAPI document', () => {
  test('has the fixed fields of version 3.1', () => {
    expect(document.openapi).toMatch(/^3\.1\.\d+$/);
    expect(document.info).toMatchObject({ title: expect.any(String), version: expect.any(String) });
    expect(Object.keys(paths).every((path) => path.startsWith('/'))).toBe(true);
  });

  test('lists every route that is served, and no other', () => {
    expect(served().length).toBeGreaterThan(60);
    expect(described().sort()).toEqual(served().sort());
  });

  test('every operation has a summary and every path parameter is described and required', () => {
    for (const [path, operations] of Object.entries(paths)) {
      const named = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      for (const [method, operation] of Object.entries(operations)) {
        const required = (operation.parameters ?? []).filter((p) => p.in === 'path' && p.required);
        expect(operation.summary, `${method} ${path}`).toBeTruthy();
        expect(required.map((p) => p.name).sort(), `${method} ${path}`).toEqual(named.sort());
      }
    }
  });

  test('every write needs its key', () => {
    for (const [path, operations] of Object.entries(paths)) {
      for (const [method, { parameters = [] }] of Object.entries(operations)) {
        const key = parameters.find((p) => p.name.toLowerCase() === 'idempotency-key');
        expect(key?.required ?? false, `${method} ${path}`).toBe(method !== 'get');
      }
    }
  });

  test('every reference inside it leads somewhere', () => {
    const references = JSON.stringify(document).matchAll(/"\$ref":"#\/([^"]+)"/g);
    for (const [, path = ''] of references) {
      const found = path.split('/').reduce<unknown>((at, step) => Reflect.get(Object(at), step), document);
      expect(found, path).toBeDefined();
    }
  });

  test('a new trap count may leave out its id and what has a default', () => {
    const operation = paths['/api/places/{place}/trap-counts']?.post as unknown as {
      requestBody: { content: Record<string, { schema: { required: string[] } }> };
    };
    const { required } = operation.requestBody.content['application/json']!.schema;
    expect(required.sort()).toEqual(['counts', 'exposureDays', 'time', 'trapId']);
  });
});

describe('docs/api.md', () => {
  const page = readFileSync('docs/api.md', 'utf8');
  const nouns = /`<noun>`: (.+)\./.exec(page)?.[1]?.match(/[a-z]+(-[a-z]+)*/g) ?? [];
  const written = [...page.matchAll(/`(GET|POST|PUT|DELETE) (\/api\/\S+?)`/g)].flatMap(([, method, path]) =>
    path!.includes('<noun>')
      ? nouns.map((noun) => `${method} ${path!.replace('<noun>', noun)}`)
      : [`${method} ${path}`],
  );

  test('names every route, and every route it names is served', () => {
    const asServed = new Set(written.map((route) => route.replace(/\?.*$/, '').replace(/:(\w+)/g, '{$1}')));
    expect([...asServed].sort()).toEqual(served().sort());
  });
});
