/** How much one address may ask in a minute. */
import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';
import { RefusalError } from '../refusals.ts';
import type { ApiDeps } from './deps.ts';

/** A page with its files and live figures asks some dozens of times a minute. */
const perMinute = { stranger: 120, known: 1200 };
/** Trying passphrases and invitations. */
export const fewTries = { rateLimit: { max: 6, timeWindow: 60_000 } };

const tooMany = () =>
  new RefusalError({
    code: 'too-many-requests',
    reason: 'Too much was asked from this address within a minute.',
  });

/** An open house serves this machine only and sets no limit. */
export async function limitRequests(app: FastifyInstance, { access }: ApiDeps): Promise<void> {
  await app.register(rateLimit, {
    max: ({ caller }) => (caller.role === 'nobody' ? perMinute.stranger : perMinute.known),
    timeWindow: 60_000,
    keyGenerator: ({ ip, caller }) => caller.credential?.id ?? ip,
    allowList: () => access.isOpen(),
    errorResponseBuilder: tooMany,
    addHeadersOnExceeding: {
      'x-ratelimit-limit': false,
      'x-ratelimit-remaining': false,
      'x-ratelimit-reset': false,
    },
  });
}
