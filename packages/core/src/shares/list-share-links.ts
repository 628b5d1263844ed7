import type { shareViewing } from '@garboard/contract/share-links';
import type { z } from 'zod';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadReport } from '../reports/load-report.ts';
import { shareRefusal } from './create-share-link.ts';
import { loadShareLink } from './load-share-link.ts';
import { presentShareLink, type ShareLinkView, withReport } from './share-link.ts';

/** The links made for a report, the newest first. @throws Refusal `not-found`, `not-allowed` */
export async function listShareLinks(
  ctx: Ctx,
  input: PageInput & { reportId: string },
): Promise<Page<ShareLinkView>> {
  const report = await loadReport(ctx, input.reportId);
  authorise(ctx.actor, report.survey, 'report.share', shareRefusal);
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.shareLink.findMany({
    where: { reportId: report.id, ...(before ? { id: { lt: before } } : {}) },
    include: { ...withReport, viewings: { orderBy: { id: 'desc' }, take: 1, select: { openedAt: true } } },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  const now = ctx.clock();
  const items = page.items.map((row) => presentShareLink(row, row.viewings[0]?.openedAt ?? null, now));
  return { items, next: page.next };
}

/** When a link was opened, the newest first. @throws Refusal `not-found`, `not-allowed` */
export async function listShareViewings(
  ctx: Ctx,
  input: PageInput & { shareLinkId: string },
): Promise<Page<z.output<typeof shareViewing>>> {
  const { link } = await loadShareLink(ctx, input.shareLinkId);
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.shareViewing.findMany({
    where: { shareLinkId: link.id, ...(before ? { id: { lt: before } } : {}) },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  const items = page.items.map(({ id, openedAt, device }) => ({
    id,
    openedAt: openedAt.toISOString(),
    device,
  }));
  return { items, next: page.next };
}
