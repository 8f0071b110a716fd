/** Values near what is asked for, and values that nobody asked for. */
import fc from 'fast-check';

/** The part of JSON Schema that the API's description uses. */
export interface Schema {
  type?: string;
  enum?: unknown[];
  const?: unknown;
  anyOf?: Schema[];
  oneOf?: Schema[];
  properties?: Record<string, Schema>;
  propertyNames?: Schema;
  additionalProperties?: Schema | boolean;
  required?: string[];
  items?: Schema;
  format?: string;
  pattern?: string;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
}

export const hostileText = fc.oneof(
  fc.constantFrom(
    '',
    ' ',
    '..',
    '../../etc/passwd',
    '%00',
    '%',
    "'; drop table record; --",
    '__proto__',
    'constructor',
    'NaN',
    '-0',
    '1e999',
    '\u0000',
    '\ud800',
    '‮',
    '<script>alert(1)</script>',
    '2026-02-30T00:00:00Z',
    '+275760-09-13T00:00:00.001Z',
    '$share/a/#',
    'a'.repeat(5000),
  ),
  fc.string(),
  fc.string({ unit: 'binary' }),
);

export const hostile = fc.oneof(
  hostileText,
  fc.constantFrom(null, true, -1, 0, 1e308, -1e-308, 2 ** 53, 2 ** 63, [], {}, [[]], [null]),
  fc.double(),
  fc.jsonValue({ maxDepth: 3 }),
  fc.constant(JSON.parse('{"__proto__": {"polluted": true}, "constructor": {"prototype": 1}}')),
);

/** Names that are there in the house of the fuzzer, so that requests get past the first door. */
const knownNames = fc.constantFrom('lean-to', 'door', 'bench', 'glasstide', 'x');
const instants = fc
  .integer({ min: Date.parse('2026-03-01T00:00:00Z'), max: Date.parse('2026-05-14T00:00:00Z') })
  .map((ms) => new Date(ms).toISOString());

/** Values that fit the schema, nearly always. */
export function fitting(schema: Schema): fc.Arbitrary<unknown> {
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  const either = schema.anyOf ?? schema.oneOf;
  if (either) return fc.oneof(...either.map(fitting));
  switch (schema.type) {
    case 'object':
      return fittingObject(schema);
    case 'array':
      return fc.array(fitting(schema.items ?? {}), { maxLength: 4 });
    case 'string':
      return fittingText(schema);
    case 'integer':
      return fc.integer({ min: clamp(schema.minimum ?? -3), max: clamp(schema.maximum ?? 40) });
    case 'number':
      return fc.double({
        min: schema.minimum ?? schema.exclusiveMinimum ?? -40,
        max: schema.maximum ?? 100,
        noNaN: true,
      });
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return hostile;
  }
}

const clamp = (value: number) => Math.min(Math.max(value, -1_000_000), 1_000_000);

function fittingObject({ properties = {}, propertyNames, additionalProperties, required = [] }: Schema) {
  const fields = fc.record(
    Object.fromEntries(Object.entries(properties).map(([name, inside]) => [name, fitting(inside)])),
    { requiredKeys: required.filter((name) => name in properties) },
  );
  if (typeof additionalProperties !== 'object') return fields;
  const name = propertyNames ? fitting(propertyNames).map(String) : knownNames;
  return fc.dictionary(name, fitting(additionalProperties), { maxKeys: 3 });
}

function fittingText({ format, pattern }: Schema): fc.Arbitrary<string> {
  if (format === 'date-time') return instants;
  if (format === 'date') return instants.map((instant) => instant.slice(0, 10));
  if (format === 'email') return fc.constant('grower@example.org');
  if (format === 'uri') return fc.constant('https://example.org/weather');
  if (pattern !== undefined && !pattern.startsWith('^[a-z0-9]')) return matching(pattern);
  return fc.oneof({ weight: 5, arbitrary: knownNames }, { weight: 1, arbitrary: fc.string() });
}

/** Some patterns say more than the generator reads. */
function matching(pattern: string): fc.Arbitrary<string> {
  try {
    return fc.stringMatching(new RegExp(pattern));
  } catch {
    return hostileText;
  }
}

/** The same with one node replaced, taken away or doubled. */
export const spoilt = (values: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc
    .tuple(values, fc.nat(), hostile, fc.constantFrom('replace', 'remove', 'add'))
    .map(([value, at, by, how]) => {
      const whole = { value: structuredClone(value) };
      const places = nodesIn(whole);
      const { parent, key } = places[at % places.length]!;
      if (how === 'remove') delete parent[key];
      else parent[how === 'add' ? `${key}x` : key] = by;
      return whole.value;
    });

interface Node {
  parent: Record<string, unknown>;
  key: string;
}

function nodesIn(parent: object): Node[] {
  return Object.entries(parent).flatMap(([key, child]) => [
    { parent: parent as Record<string, unknown>, key },
    ...(typeof child === 'object' && child !== null ? nodesIn(child) : []),
  ]);
}
