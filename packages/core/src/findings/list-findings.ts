import type { Finding, findingQuery } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import type { z } from 'zod';
import type { ReadCtx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { presentFindings } from './present-finding.ts';
import { readFindings } from './read-findings.ts';

/** A survey's findings in the order of the report. @throws Refusal `not-found` */
export async function listFindings(
  ctx: ReadCtx,
  query: z.output<typeof findingQuery> & { surveyId: string },
): Promise<Page<Finding>> {
  const after = decodeCursor(query.cursor, /^\d{1,9}$/);
  const given = [
    Prisma.sql`f.number > ${after === undefined ? 0 : Number(after)}`,
    query.urgency ? Prisma.sql`f.urgency = ${query.urgency}` : null,
    query.state ? Prisma.sql`f.state = ${query.state}` : null,
  ].filter((term) => term !== null);
  const read = await readFindings(ctx, {
    survey: Prisma.sql`${query.surveyId}::uuid`,
    where: Prisma.join(given, ' AND '),
    limit: query.limit + 1,
  });
  const page = cutPage(read.rows, query.limit, (row) => String(row.number));
  return { items: presentFindings(ctx, { ...read, rows: page.items }), next: page.next };
}
