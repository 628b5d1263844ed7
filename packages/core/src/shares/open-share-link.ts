import type { sharedReport, sharedReportOpen, shareLinkInfo } from '@garboard/contract/share-links';
import { widen } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { findShareLink } from '@garboard/db/special-reads';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { deviceWords } from '../people/device-words.ts';
import { secretFits } from '../people/passwords.ts';
import { hashToken, newToken } from '../people/tokens.ts';
import { Refusal } from '../problems.ts';
import { linkEnded, liveShareLink } from './share-link.ts';
import { presentShared } from './shared-report.ts';

/** For so long after opening it a report can be read on. */
export const viewingMs = 60 * 60_000;

/** The link with this secret, and a context that acts for its firm: whoever holds it is nobody to the firm. */
async function byToken(ctx: Ctx, token: string) {
  const found = await findShareLink(ctx.tx, hashToken(token));
  if (!found) throw linkEnded();
  await widen(ctx.tx, [found.firm_id]);
  const within: Ctx = { ...ctx, actor: { kind: 'system', firmIds: [found.firm_id] } };
  const link = await liveShareLink(within, found.id);
  if (link.viewLimit !== null && link.views >= link.viewLimit) throw linkEnded();
  return { link, within };
}

/** Whether a link still opens and asks for a passcode; opens nothing. @throws Refusal `link-spent` */
export async function lookUpShareLink(ctx: Ctx, token: string): Promise<z.output<typeof shareLinkInfo>> {
  const { link } = await byToken(ctx, token);
  return {
    passcodeNeeded: link.passcodeHash !== null,
    viewsLeft: link.viewLimit === null ? null : link.viewLimit - link.views,
    expiresAt: link.expiresAt.toISOString(),
  };
}

/**
 * Opens a link: one view is counted and written into the survey's history. Answers what is shared, and the secret of
 * this viewing for the reader's cookie.
 *
 * @throws Refusal `link-spent`, also for the one who is a view too late; `wrong-passcode`
 */
export async function openShareLink(
  ctx: Ctx,
  input: z.output<typeof sharedReportOpen> & { userAgent: string | undefined },
): Promise<{ viewing: string; shared: z.output<typeof sharedReport> }> {
  const { link, within } = await byToken(ctx, input.token);
  if (link.passcodeHash !== null && !(await secretFits(link.passcodeHash, input.passcode ?? ''))) {
    throw new Refusal('wrong-passcode', 'Type the passcode that came with the link; ask its giver for it.');
  }
  const now = ctx.clock();
  const { viewLimit } = ctx.tx.shareLink.fields;
  const counted = await ctx.tx.shareLink.updateMany({
    where: { id: link.id, revokedAt: null, OR: [{ viewLimit: null }, { views: { lt: viewLimit } }] },
    data: { views: { increment: 1 } },
  });
  if (counted.count === 0) throw linkEnded();
  const viewing = newToken();
  const { firmId, surveyId, reportId } = link;
  const row = await ctx.tx.shareViewing.create({
    data: {
      ...{
        id: newId(),
        firmId,
        surveyId,
        shareLinkId: link.id,
        tokenHash: hashToken(viewing),
        openedAt: now,
      },
      expiresAt: new Date(Math.min(now.getTime() + viewingMs, link.expiresAt.getTime())),
      device: deviceWords(input.userAgent),
    },
  });
  await recordEvent(within, {
    ...{ firmId, surveyId, reportId, kind: 'report.opened-by-link', role: 'link' },
    behalf: { id: null, name: link.label },
    data: { label: link.label },
  });
  return { viewing, shared: await presentShared(within, link, row) };
}
