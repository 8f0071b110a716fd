/**
 * The owner's passphrase, kept as scrypt (RFC 7914). People choose it, so guessing must be slow: a trial
 * takes 32 MB and about a tenth of a second of this machine. Cost N = 2^15, r = 8, p = 3 is one of the
 * settings OWASP's Password Storage Cheat Sheet gives as equal; it fits a computer with 512 MB.
 */
import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';

export const shortestPassphrase = 12;
export const longestPassphrase = 200;

interface Cost {
  N: number;
  r: number;
  p: number;
}
const usualCost: Cost = { N: 2 ** 15, r: 8, p: 3 };
const keyBytes = 32;

/** `scrypt$N$r$p$salt$key`: the cost stands beside the key, so that it can be raised later. */
export async function hashPassphrase(passphrase: string, cost: Cost = usualCost): Promise<string> {
  const salt = randomBytes(16);
  const key = await derive(passphrase, salt, cost);
  return ['scrypt', cost.N, cost.r, cost.p, salt.toString('base64url'), key.toString('base64url')].join('$');
}

/** @throws when `kept` is not in the form above: the file was changed by hand. */
export async function isPassphrase(passphrase: string, kept: string): Promise<boolean> {
  const [name, N, r, p, salt = '', key = ''] = kept.split('$');
  if (name !== 'scrypt') throw new Error('The kept passphrase is in an unknown form: choose a new one.');
  const cost = { N: Number(N), r: Number(r), p: Number(p) };
  const derived = await derive(passphrase, Buffer.from(salt, 'base64url'), cost);
  const wanted = Buffer.from(key, 'base64url');
  return wanted.length === derived.length && timingSafeEqual(wanted, derived);
}

/** The same letters are the same passphrase on every keyboard (Unicode NFKC), spaces at the ends aside. */
const plain = (passphrase: string) => passphrase.normalize('NFKC').trim();

/** Undefined when it will do, else what to do instead. */
export function passphraseIssue(passphrase: string): string | undefined {
  const { length } = plain(passphrase);
  if (length < shortestPassphrase) {
    return `use at least ${shortestPassphrase} characters, such as four words that have nothing to do with each other`;
  }
  if (length > longestPassphrase) return `use at most ${longestPassphrase} characters`;
  if (new Set(plain(passphrase)).size < 5) return 'use more different characters';
  return undefined;
}

function derive(passphrase: string, salt: Buffer, cost: Cost): Promise<Buffer> {
  const options: ScryptOptions = { ...cost, maxmem: 64 * 1024 * 1024 };
  return new Promise((resolve, reject) => {
    scrypt(plain(passphrase), salt, keyBytes, options, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });
}
