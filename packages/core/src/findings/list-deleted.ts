import type { DeletedFinding } from '@garboard/contract/findings';
import type { System, Urgency } from '@garboard/trade/vocabulary';
import { may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { goneBefore, removedOn } from './deleted-record.ts';

/** Drafts of a survey that were deleted and can still be brought back; only the firm has seen them. */
export async function listDeletedFindings(
  ctx: Ctx,
  query: { surveyId: string; limit: number; cursor?: string | undefined },
): Promise<Page<DeletedFinding>> {
  const survey = await loadSurvey(ctx, query.surveyId);
  if (!may(ctx.actor, survey, 'finding.deleted.read')) throw notFound('list of deleted findings');
  const [at, id] = decodeCursor(query.cursor, cursorForm)?.split('_') ?? [];
  const after = at && id ? { at: new Date(Number(at)), id } : null;
  const rows = await ctx.tx.deletedFinding.findMany({
    where: {
      surveyId: survey.id,
      deletedAt: { gte: goneBefore(ctx.clock()), ...(after ? { lte: after.at } : {}) },
      ...(after ? { OR: [{ deletedAt: { lt: after.at } }, { id: { lt: after.id } }] } : {}),
    },
    omit: { record: true },
    orderBy: [{ deletedAt: 'desc' }, { id: 'desc' }],
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => `${row.deletedAt.getTime()}_${row.id}`);
  const items = page.items.map((row) => ({
    id: row.id,
    number: row.number,
    title: row.title,
    system: row.system as System,
    urgency: row.urgency as Urgency,
    deletedAt: row.deletedAt.toISOString(),
    deletedBy: row.deletedBy,
    removedOn: removedOn(row.deletedAt),
  }));
  return { items, next: page.next };
}

const cursorForm = /^\d{1,15}_[0-9a-f-]{36}$/;
