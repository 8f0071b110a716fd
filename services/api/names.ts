/**
 * The service has no sign-in and trusts this machine. A foreign page could still reach in from the owner's own
 * browser by giving its domain the address 127.0.0.1 (DNS rebinding); the Host header then names that domain.
 */
import type { FastifyRequest } from 'fastify';
import { RefusalError } from '../refusals.ts';

const ownNames = /^(localhost|127(\.\d{1,3}){3}|\[?::1\]?)$/;

export function isThisMachine(host: string): boolean {
  return ownNames.test(host);
}

export async function refuseOtherNames({ hostname }: FastifyRequest): Promise<void> {
  if (isThisMachine(hostname)) return;
  throw new RefusalError({
    code: 'host-unknown',
    reason: `This service answers on this machine only, and the request was for ${hostname.slice(0, 100)}.`,
  });
}
