import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { RefusalError } from '../../refusals.ts';
import type { Warning } from '../../store/store.ts';
import type { ApiDeps } from '../deps.ts';
import { placePath, refused, warning } from '../schemas/answers.ts';
import { isoOf } from '../window.ts';

const warningPath = placePath.extend({ id: z.string().min(1).max(200) });
const dayMs = 86_400_000;

/** Things with a deadline; each can be put off or closed by the grower. */
export const warningRoutes =
  ({ store, clock, changes }: ApiDeps): FastifyPluginAsyncZod =>
  async (app) => {
    const answer = { 200: warning, ...refused };

    app.get(
      '/places/:place/warnings',
      {
        schema: {
          summary: 'Warnings, nearest deadline first',
          params: placePath,
          response: { 200: z.object({ warnings: z.array(warning) }), ...refused },
        },
      },
      async ({ params }) => ({
        warnings: store.warnings.list(params.place).map((each) => shown(each, clock.nowMs())),
      }),
    );

    app.post(
      '/places/:place/warnings/:id/put-off',
      {
        schema: {
          summary: 'Put a warning off for some days',
          params: warningPath,
          body: z.strictObject({ days: z.int().min(1).max(60) }),
          response: answer,
        },
      },
      async ({ params, body }) =>
        change(params, { state: 'put-off', putOffUntilMs: clock.nowMs() + body.days * dayMs }),
    );

    app.post(
      '/places/:place/warnings/:id/close',
      { schema: { summary: 'Close a warning', params: warningPath, response: answer } },
      async ({ params }) => change(params, { state: 'closed' }),
    );

    function change(path: z.infer<typeof warningPath>, to: Partial<Warning>) {
      const found = store.warnings.get(path.place, path.id);
      if (!found) {
        throw new RefusalError({
          code: 'record-unknown',
          reason: `There is no warning ${path.id} in ${path.place}.`,
        });
      }
      const changed = { ...found, ...to };
      store.warnings.save(changed);
      changes.tell({ placeId: path.place, what: 'warning' });
      return shown(changed, clock.nowMs());
    }
  };

function shown(warning: Warning, nowMs: number) {
  const { id, rule, raisedAtMs, deadlineMs, text, reason, ends, urgentFromMs, state, putOffUntilMs, ended } =
    warning;
  return {
    id,
    rule,
    raisedAt: isoOf(raisedAtMs),
    deadline: isoOf(deadlineMs),
    text,
    reason,
    ends,
    urgent: urgentFromMs !== undefined && urgentFromMs <= nowMs,
    state,
    ...(putOffUntilMs !== undefined && { putOffUntil: isoOf(putOffUntilMs) }),
    ...(ended !== undefined && { ended }),
  };
}
