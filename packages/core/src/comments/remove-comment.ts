import { actorId } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { issuedTitle, loadFinding } from '../findings/load-finding.ts';
import { notAllowed, notFound } from '../problems.ts';
import { readableComments } from './readable-comments.ts';

/**
 * Takes a comment of one's own back: its text goes, that there was one stays. Doing it twice changes nothing.
 *
 * @throws Refusal `not-found`; `not-allowed` for somebody else's
 */
export async function removeComment(ctx: Ctx, id: string): Promise<void> {
  const comment = await ctx.tx.findingComment.findUnique({ where: { id }, select: { findingId: true } });
  if (!comment) throw notFound('comment');
  const finding = await loadFinding(ctx, comment.findingId);
  const { firmId, surveyId, survey } = finding;
  const readable = await ctx.tx.findingComment.findFirst({
    where: { AND: [{ id }, readableComments(ctx.actor, survey)] },
  });
  if (!readable) throw notFound('comment');
  const role = authorise(
    ctx.actor,
    survey,
    'comment.write',
    'Comments are for those who may read the finding.',
  );
  if (readable.byId === null || readable.byId !== actorId(ctx.actor)) {
    throw notAllowed('Only its author may take a comment back.');
  }
  const removed = await ctx.tx.findingComment.updateMany({
    where: { id, removedAt: null },
    data: { text: '', removedAt: ctx.clock() },
  });
  if (removed.count === 0) return;
  const data = { title: issuedTitle(finding) };
  await recordEvent(ctx, { firmId, surveyId, findingId: finding.id, kind: 'comment.removed', role, data });
}
