import { Prisma } from '@garboard/db/database';
import { type NoticeKind, noticeKinds } from '@garboard/trade/notice-kinds';

const kindsOf = (sight: 'survey' | 'issued'): string[] =>
  (Object.keys(noticeKinds) as NoticeKind[]).filter((kind) => noticeKinds[kind].sight === sight);

/**
 * "May see" of notices, as a condition on `notices n`: the person's own, of firms they work for and of surveys they
 * may still read. A party that was removed, or from which a release was withdrawn, has lost those that told of it.
 */
export const visibleNotices = (personId: string): Prisma.Sql => Prisma.sql`
  n.person_id = ${personId}::uuid AND (
    EXISTS (SELECT FROM firm_members m WHERE m.firm_id = n.firm_id AND m.person_id = n.person_id)
    OR (n.kind = ANY(${kindsOf('survey')}) AND EXISTS (
      SELECT FROM parties p WHERE p.survey_id = n.survey_id AND p.person_id = n.person_id))
    OR (n.kind = ANY(${kindsOf('issued')}) AND EXISTS (
      SELECT FROM parties p
      WHERE p.survey_id = n.survey_id AND p.person_id = n.person_id AND p.released AND NOT p.held
        AND (p.role <> 'yard' OR EXISTS (
          SELECT FROM finding_yards y WHERE y.finding_id = n.finding_id AND y.party_id = p.id)))))`;
