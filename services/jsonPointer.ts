/** JSON Pointer (RFC 6901): a path into a JSON document, such as /probes/0/t. */

/**
 * Evaluates a pointer (RFC 6901 §4); undefined when it leads nowhere. `~1` stands for / and `~0`
 * for ~, replaced in this order (§4), and array indices have no leading zero.
 */
export function valueAtPointer(document: unknown, pointer: string): unknown {
  if (pointer === '') return document;
  if (!pointer.startsWith('/')) return undefined;
  return pointer
    .slice(1)
    .split('/')
    .map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'))
    .reduce<unknown>(step, document);
}

/** Pointers to the numbers and texts of a document, for "the message has ...". */
export function pointersIn(document: unknown, prefix = '', most = 8): string[] {
  if (typeof document !== 'object' || document === null) return prefix === '' ? [] : [prefix];
  const found: string[] = [];
  for (const [key, value] of Object.entries(document)) {
    if (found.length >= most) break;
    const token = key.replaceAll('~', '~0').replaceAll('/', '~1');
    if (prefix.length < 200) found.push(...pointersIn(value, `${prefix}/${token}`, most - found.length));
  }
  return found;
}

function step(value: unknown, token: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  if (Array.isArray(value)) return /^(0|[1-9]\d*)$/.test(token) ? value[Number(token)] : undefined;
  return Object.hasOwn(value, token) ? Reflect.get(value, token) : undefined;
}
