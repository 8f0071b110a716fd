import { describe, expect, it } from 'vitest';
import { pointersIn, valueAtPointer } from '../../services/jsonPointer.ts';

/** The document and the results of RFC 6901 (April 2013) §5, written down from memory. */
const document = {
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8,
};
const published: [string, unknown][] = [
  ['', document],
  ['/foo', ['bar', 'baz']],
  ['/foo/0', 'bar'],
  ['/', 0],
  ['/a~1b', 1],
  ['/c%d', 2],
  ['/e^f', 3],
  ['/g|h', 4],
  ['/i\\j', 5],
  ['/k"l', 6],
  ['/ ', 7],
  ['/m~0n', 8],
];

describe('JSON Pointer', () => {
  it.each(published)('RFC 6901 §5: %j', (pointer, expected) => {
    expect(valueAtPointer(document, pointer)).toEqual(expected);
  });

  it('RFC 6901 §4: ~01 is ~1 and never /', () => {
    expect(valueAtPointer({ '~1': 'tilde one', '/': 'slash' }, '/~01')).toBe('tilde one');
  });

  it.each(['/foo/00', '/foo/2', '/foo/-', '/foo/length', '/no', 'foo', '/toString'])(
    '%s leads nowhere',
    (to) => {
      expect(valueAtPointer(document, to)).toBeUndefined();
    },
  );

  it('lists pointers that lead back to their values', () => {
    for (const pointer of pointersIn({ 'a/b': { 'm~n': 3 }, list: [1, [2]] })) {
      expect(valueAtPointer({ 'a/b': { 'm~n': 3 }, list: [1, [2]] }, pointer)).toBeTypeOf('number');
    }
    expect(pointersIn({ 'a/b': { 'm~n': 3 }, list: [1, [2]] })).toEqual([
      '/a~1b/m~0n',
      '/list/0',
      '/list/1/0',
    ]);
  });
});
