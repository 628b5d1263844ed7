import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { loadShareLink } from './load-share-link.ts';

/** Ends a link at once, and with it whatever is being read by it. @throws Refusal `not-found`, `not-allowed` */
export async function revokeShareLink(ctx: Ctx, shareLinkId: string): Promise<void> {
  const { link, role } = await loadShareLink(ctx, shareLinkId);
  const ended = await ctx.tx.shareLink.updateMany({
    where: { id: link.id, revokedAt: null },
    data: { revokedAt: ctx.clock() },
  });
  if (ended.count === 0) return;
  await recordEvent(ctx, {
    ...{ firmId: link.firmId, surveyId: link.surveyId, reportId: link.reportId },
    ...{ kind: 'report.share-ended', role, data: { label: link.label } },
  });
}
