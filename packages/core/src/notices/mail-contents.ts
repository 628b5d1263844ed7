import type { NoticeFacts } from '@garboard/trade/notice-words/sayable';
import type { Ctx } from '../context.ts';
import { noticeFactsForm } from './notice-facts.ts';
import { noticePath } from './notice-path.ts';
import { visibleNotices } from './visible-notices.ts';

/** One thing that a message tells. */
export interface ToldNotice {
  kind: string;
  facts: NoticeFacts;
  at: Date;
  /** Where it can be read, below the address of the installation. */
  path: string;
}

/** What a message is made of. */
export interface MailContents {
  person: {
    name: string;
    email: string;
    language: string;
    timeZone: string | null;
    /** Why the mail server takes nothing for this address, if so. */
    mailProblem: string | null;
  };
  /** In the order in which it happened. */
  notices: ToldNotice[];
}

interface Row {
  kind: string;
  facts: unknown;
  at: Date;
  survey_id: string | null;
  finding_id: string | null;
}

/**
 * What of a message is still to be told: nothing that its person has read in the portal meanwhile or may no longer
 * see. Null when nothing is left.
 */
export async function mailContents(
  ctx: Pick<Ctx, 'tx'>,
  { mailId, personId }: { mailId: string; personId: string },
): Promise<MailContents | null> {
  const rows = await ctx.tx.$queryRaw<Row[]>`
    SELECT n.kind, n.facts, n.at, n.survey_id, n.finding_id FROM notices n
    WHERE n.mail_id = ${mailId}::uuid AND n.read_at IS NULL AND ${visibleNotices(personId)}
    ORDER BY n.at, n.id`;
  if (rows.length === 0) return null;
  const person = await ctx.tx.person.findUniqueOrThrow({
    where: { id: personId },
    select: { name: true, email: true, language: true, timeZone: true, mailProblem: true },
  });
  return {
    person,
    notices: rows.map((row) => ({
      kind: row.kind,
      facts: noticeFactsForm.parse(row.facts),
      at: row.at,
      path: noticePath({ kind: row.kind, surveyId: row.survey_id, findingId: row.finding_id }),
    })),
  };
}
