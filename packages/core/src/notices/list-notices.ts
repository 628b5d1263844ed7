import type { Notice } from '@garboard/contract/notices';
import { Prisma } from '@garboard/db/database';
import type { NoticeTopic } from '@garboard/trade/notice-kinds';
import { noticeText } from '@garboard/trade/notice-words/words-of';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { noticeFactsForm } from './notice-facts.ts';
import { noticePath } from './notice-path.ts';
import { readerOf } from './reader-of.ts';
import { visibleNotices } from './visible-notices.ts';

interface Row {
  id: string;
  kind: string;
  topic: string;
  facts: unknown;
  at: Date;
  read_at: Date | null;
  survey_id: string | null;
  finding_id: string | null;
}

/** What a person was told, newest first, in the portal's own language. @throws Refusal `not-allowed` */
export async function listNotices(ctx: Ctx, input: PageInput & { unread: boolean }): Promise<Page<Notice>> {
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT n.id, n.kind, n.topic, n.facts, n.at, n.read_at, n.survey_id, n.finding_id FROM notices n
    WHERE ${visibleNotices(readerOf(ctx.actor))}
      ${before ? Prisma.sql`AND n.id < ${before}::uuid` : Prisma.empty}
      ${input.unread ? Prisma.sql`AND n.read_at IS NULL` : Prisma.empty}
    ORDER BY n.id DESC LIMIT ${input.limit + 1}`;
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map(present), next: page.next };
}

function present(row: Row): Notice {
  const { kind, survey_id: surveyId, finding_id: findingId } = row;
  return {
    id: row.id,
    kind,
    topic: row.topic as NoticeTopic,
    at: row.at.toISOString(),
    read: row.read_at !== null,
    ...noticeText({ kind, facts: noticeFactsForm.parse(row.facts) }, 'en-GB'),
    path: noticePath({ kind, surveyId, findingId }),
    surveyId,
    findingId,
  };
}
