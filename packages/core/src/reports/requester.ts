import type { Ctx } from '../context.ts';

interface Requested {
  id: string;
  surveyId: string;
  requestedById: string | null;
  requestedBy: string;
}

/** Who asked for a report, as the history names them: the worker only does what they asked. */
export async function requesterOf(ctx: Ctx, report: Requested) {
  const asked = await ctx.tx.event.findFirst({
    where: { surveyId: report.surveyId, reportId: report.id, kind: 'report.requested' },
    orderBy: { id: 'desc' },
    select: { actorRole: true },
  });
  return {
    behalf: { id: report.requestedById, name: report.requestedBy },
    role: asked?.actorRole ?? 'surveyor',
  };
}
