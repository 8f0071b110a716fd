import { scryptSync } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { hashPassphrase, isPassphrase, passphraseIssue } from '../../services/access/passphrase.ts';

const quick = { N: 2 ** 4, r: 8, p: 1 };

describe('a kept passphrase', () => {
  test('opens to itself and to nothing else', async () => {
    const kept = await hashPassphrase('copper kettle under snow', quick);
    expect(await isPassphrase('copper kettle under snow', kept)).toBe(true);
    expect(await isPassphrase('copper kettle under snow!', kept)).toBe(false);
    expect(await isPassphrase('', kept)).toBe(false);
  });

  test('is never kept the same way twice, and does not contain itself', async () => {
    const [one, two] = [
      await hashPassphrase('copper kettle', quick),
      await hashPassphrase('copper kettle', quick),
    ];
    expect(one).not.toBe(two);
    expect(one).not.toContain('copper');
  });

  test('is scrypt with the cost that stands beside it', async () => {
    const [, N, r, p, salt = '', key] = (await hashPassphrase('copper kettle')).split('$');
    expect([N, r, p]).toEqual(['32768', '8', '3']);
    const derived = scryptSync('copper kettle', Buffer.from(salt, 'base64url'), 32, {
      N: 32768,
      r: 8,
      p: 3,
      maxmem: 2 ** 26,
    });
    expect(derived.toString('base64url')).toBe(key);
  });

  // RFC 7914, section 12, second vector: N = 1024, r = 8, p = 16, 64 bytes; isPassphrase compares as many as are kept.
  test('is read as RFC 7914 has it', async () => {
    const vector =
      'fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b3731622eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640';
    const salt = Buffer.from('NaCl').toString('base64url');
    // Not below 32 bytes: scrypt's last step is PBKDF2, so the first 32 bytes are the 32-byte key.
    const key = Buffer.from(vector, 'hex').subarray(0, 32).toString('base64url');
    expect(await isPassphrase('password', `scrypt$1024$8$16$${salt}$${key}`)).toBe(true);
    expect(await isPassphrase('Password', `scrypt$1024$8$16$${salt}$${key}`)).toBe(false);
  });

  // Unicode Standard Annex 15: U+00E9 and U+0065 U+0301 are the same letter.
  test('is the same from every keyboard', async () => {
    const kept = await hashPassphrase('caf\u00e9 in the snow', quick);
    expect(await isPassphrase(' cafe\u0301 in the snow ', kept)).toBe(true);
  });

  test('in an unknown form is an error, not a way in', async () => {
    await expect(isPassphrase('x', 'plain$x')).rejects.toThrow(/unknown form/);
    await expect(isPassphrase('', '')).rejects.toThrow(/unknown form/);
  });
});

describe('a passphrase will not do', () => {
  test.each([
    ['short', /at least 12/],
    ['           x           ', /at least 12/],
    ['aaaaaaaaaaaaaaaa', /more different/],
    ['x'.repeat(201), /at most 200/],
  ])('when it is %s', (passphrase, expected) => {
    expect(passphraseIssue(passphrase)).toMatch(expected);
  });

  test('unless it is long enough', () => {
    expect(passphraseIssue('copper kettle under snow')).toBeUndefined();
  });
});
