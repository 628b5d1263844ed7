import type { shareLink } from '@garboard/contract/share-links';
import type { Prisma } from '@garboard/db/database';
import { firmRoles } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';

export type ShareLinkView = z.output<typeof shareLink>;

/** The link's rows with what decides whether it still opens. */
export const withReport = {
  report: { select: { state: true, survey: { select: { held: true } } } },
} as const;
type LinkRow = Prisma.ShareLinkGetPayload<{ include: typeof withReport }>;

/** What somebody is told whose link doesn't open, whatever the reason: nobody learns what once was behind it. */
export const linkEnded = () =>
  new Refusal('link-spent', 'This link has run out or was ended. Ask whoever gave it to you for another.');

const opens = (row: LinkRow, now: Date): boolean =>
  row.revokedAt === null && row.expiresAt > now && row.report.state === 'issued' && !row.report.survey.held;

const usedUp = (row: LinkRow): boolean => row.viewLimit !== null && row.views >= row.viewLimit;

/** Whether the link's maker may still show the report: staff acted for the firm, a party only for as long as it pays and sees. */
async function makerStillMay(ctx: Ctx, row: LinkRow): Promise<boolean> {
  if ((firmRoles as readonly string[]).includes(row.madeByRole)) return true;
  if (row.madeById === null) return false;
  const party = await ctx.tx.party.findFirst({
    where: {
      ...{ surveyId: row.surveyId, personId: row.madeById, role: row.madeByRole },
      ...{ client: true, released: true, held: false },
    },
    select: { id: true },
  });
  return party !== null;
}

/** The link, if what is behind it may still be read by it. @throws Refusal `link-spent` */
export async function liveShareLink(ctx: Ctx, id: string): Promise<LinkRow> {
  const row = await ctx.tx.shareLink.findUnique({ where: { id }, include: withReport });
  if (!row || !opens(row, ctx.clock()) || !(await makerStillMay(ctx, row))) throw linkEnded();
  return row;
}

/** As its maker and the firm see it. @param lastViewAt when it was last opened */
export function presentShareLink(row: LinkRow, lastViewAt: Date | null, now: Date): ShareLinkView {
  return {
    id: row.id,
    reportId: row.reportId,
    label: row.label,
    passcodeSet: row.passcodeHash !== null,
    expiresAt: row.expiresAt.toISOString(),
    viewLimit: row.viewLimit,
    views: row.views,
    lastViewAt: lastViewAt?.toISOString() ?? null,
    createdAt: row.createdAt.toISOString(),
    madeBy: row.madeByName,
    revokedAt: row.revokedAt?.toISOString() ?? null,
    works: opens(row, now) && !usedUp(row),
  };
}
