/** Every refusal leaves the API in one shape: { code, reason, whatToDo, issues }. */
import type { FastifyError, FastifyReply, FastifyRequest, FastifySchemaCompiler } from 'fastify';
import { isResponseSerializationError } from 'fastify-type-provider-zod';
import type { z } from 'zod';
import { issuesOf, sentenceOf } from '../issues.ts';
import { type Refusal, RefusalError, refusals } from '../refusals.ts';

export function refusalBody({ code, reason, issues = [] }: Refusal) {
  return { code, reason, whatToDo: refusals[code].whatToDo, issues };
}

/** Checks a part of a request against its zod schema; what does not fit becomes a refusal that names it. */
export const validate: FastifySchemaCompiler<z.ZodType> =
  ({ schema }) =>
  (sent: unknown) => {
    const result = schema.safeParse(sent);
    if (result.success) return { value: result.data };
    const issues = issuesOf(result.error, sent);
    const reason = `${sentenceOf(issues)} Nothing was changed.`;
    return { error: new RefusalError({ code: 'record-invalid', reason, issues }) };
  };

/** What an address gets that leads nowhere. */
export function nothingAt({ method, url }: Pick<FastifyRequest, 'method' | 'url'>): Refusal {
  return { code: 'route-unknown', reason: `There is nothing at ${method} ${url.slice(0, 200)}.` };
}

/** The one error handler. What is not a refusal is a fault of ours: logged, and told without its inside. */
export function handleError(error: FastifyError, request: FastifyRequest, reply: FastifyReply) {
  const refusal = refusalFrom(error, request);
  if (refusal.code === 'fault') request.log.error(error);
  return reply.code(refusals[refusal.code].status).send(refusalBody(refusal));
}

function refusalFrom(error: FastifyError, request: FastifyRequest): Refusal {
  if (error instanceof RefusalError) return error.refusal;
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE') {
    return {
      code: 'payload-too-large',
      reason: 'The request is larger than is taken here. Nothing was kept.',
    };
  }
  if (isTurnedAway(error)) {
    // Without a body it was the address: one that can be no path of a file.
    if (request.method === 'GET' || request.method === 'HEAD') return nothingAt(request);
    const reason = 'The body could not be read as JSON (NaN and Infinity are not JSON). Nothing was kept.';
    return { code: 'payload-unreadable', reason };
  }
  if (isResponseSerializationError(error)) {
    return { code: 'fault', reason: 'The answer did not have its documented shape and was held back.' };
  }
  return { code: 'fault', reason: 'Something went wrong inside.' };
}

/** What fastify turns away by itself: an address that cannot be, a body of another media type or not JSON. */
function isTurnedAway({ statusCode = 500 }: FastifyError): boolean {
  return statusCode >= 400 && statusCode < 500;
}
