import type { FindingComment } from '@garboard/contract/finding-comments';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { presentComment, readableComments } from './readable-comments.ts';

/** Comments on a finding that the actor may read, oldest first. @throws Refusal `not-found`, `not-allowed` */
export async function listComments(
  ctx: Ctx,
  { findingId, query }: { findingId: string; query: PageInput },
): Promise<Page<FindingComment>> {
  const { survey } = await loadFinding(ctx, findingId);
  authorise(ctx.actor, survey, 'comment.read', 'Comments are for those who may read the finding.');
  const after = decodeCursor(query.cursor, uuidForm);
  const rows = await ctx.tx.findingComment.findMany({
    where: {
      AND: [
        { findingId, ...(after === undefined ? {} : { id: { gt: after } }) },
        readableComments(ctx.actor, survey),
      ],
    },
    orderBy: { id: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.id);
  return { items: page.items.map((row) => presentComment(row, ctx.actor)), next: page.next };
}
