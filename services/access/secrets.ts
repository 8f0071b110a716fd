/** Random secrets, and how they are kept. */
import { createHash, randomBytes, randomUUID } from 'node:crypto';

/** 192 random bits in 32 letters, digits, - and _: nobody guesses that, so no slow hash is needed. */
export const newSecret = (): string => randomBytes(24).toString('base64url');

/** What the store keeps of such a secret. */
export const secretHash = (secret: string): string => createHash('sha256').update(secret).digest('base64url');

export const newId = (): string => randomUUID();

/** For logs: whatever in an address is long and random enough to be a secret is not written down. */
export const withoutSecrets = (url: string): string => url.replace(/[A-Za-z0-9_-]{24,}/g, '...');
