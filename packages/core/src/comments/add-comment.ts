import type { FindingComment, findingCommentCreate } from '@garboard/contract/finding-comments';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import { idTaken, unlessTaken } from '../client-ids.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { issuedTitle, loadFinding } from '../findings/load-finding.ts';
import { wrongState } from '../problems.ts';
import { presentComment } from './readable-comments.ts';

export interface AddComment {
  findingId: string;
  comment: z.output<typeof findingCommentCreate>;
}

/**
 * Says something on an issued finding to the firm and the parties chosen. With an id made by the client, sent again,
 * it answers the comment already kept.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` for a draft or an id that names something else
 */
export async function addComment(ctx: Ctx, { findingId, comment }: AddComment): Promise<FindingComment> {
  const finding = await loadFinding(ctx, findingId);
  const { firmId, surveyId, survey } = finding;
  const role = authorise(
    ctx.actor,
    survey,
    'comment.write',
    'Comments are for those who may read the finding.',
  );
  if (finding.state === 'draft') {
    throw wrongState(
      'This finding has not been issued yet; the firm’s own remarks on drafts go into its review.',
    );
  }
  const byId = actorId(ctx.actor);
  const { id = newId(), text } = comment;
  if (comment.id) {
    const kept = await ctx.tx.findingComment.findUnique({ where: { id } });
    if (kept && (kept.findingId !== findingId || kept.byId !== byId)) throw idTaken('comment');
    if (kept) return presentComment(kept, ctx.actor);
  }
  const visibleTo = [...new Set(comment.visibleTo)];
  const by = { byId, byName: actorName(ctx.actor), byRole: role };
  const create = ctx.tx.findingComment.create({
    data: { id, firmId, surveyId, findingId, text, visibleTo, ...by, at: ctx.clock() },
  });
  await unlessTaken(create, 'comment');
  const row = await ctx.tx.findingComment.findUniqueOrThrow({ where: { id } });
  // Its words are kept in one place only, so that its author can take them back.
  const data = { title: issuedTitle(finding), commentId: id };
  const tell = await readers(ctx, surveyId, visibleTo);
  await recordEvent(ctx, { firmId, surveyId, findingId, kind: 'comment.added', role, data, tell });
  return presentComment(row, ctx.actor);
}

/** The people outside the firm for whom it is meant. */
async function readers(ctx: Ctx, surveyId: string, roles: readonly string[]): Promise<string[]> {
  const parties = await ctx.tx.party.findMany({
    where: { surveyId, released: true, held: false, role: { in: [...roles] } },
    select: { personId: true },
  });
  return parties.map((p) => p.personId);
}
