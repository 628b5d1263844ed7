import type { shareLinkCreate, shareLinkCreated } from '@garboard/contract/share-links';
import { newId } from '@garboard/db/ids';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { hashPassword } from '../people/passwords.ts';
import { hashToken, newToken } from '../people/tokens.ts';
import { wrongState } from '../problems.ts';
import { loadReport } from '../reports/load-report.ts';
import { presentShareLink, withReport } from './share-link.ts';

const dayMs = 86_400_000;

export const shareRefusal =
  'Only the survey firm and the client, who owns the report, may share it by a link.';

/**
 * Makes a link that shows one issued report, and nothing else, to whoever holds it. It is answered this once and kept
 * only as a hash.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` while the report isn't issued or is withheld
 */
export async function createShareLink(
  ctx: Ctx,
  input: { reportId: string; link: z.output<typeof shareLinkCreate>; publicUrl: string },
): Promise<z.output<typeof shareLinkCreated>> {
  const report = await loadReport(ctx, input.reportId);
  const role = authorise(ctx.actor, report.survey, 'report.share', shareRefusal);
  if (report.state !== 'issued') throw wrongState('Only an issued document can be shared.');
  const { label, days, passcode, viewLimit } = input.link;
  const now = ctx.clock();
  const token = newToken();
  const row = await ctx.tx.shareLink.create({
    data: {
      ...{ id: newId(), firmId: report.firmId, surveyId: report.surveyId, reportId: report.id },
      ...{ label, viewLimit, tokenHash: hashToken(token), createdAt: now },
      passcodeHash: passcode === null ? null : await hashPassword(passcode),
      expiresAt: new Date(now.getTime() + days * dayMs),
      ...{ madeById: actorId(ctx.actor), madeByName: actorName(ctx.actor), madeByRole: role },
    },
    include: withReport,
  });
  if (row.report.survey.held) {
    throw wrongState('This report is withheld for now. Once it has been released it can be shared.');
  }
  await recordEvent(ctx, {
    ...{ firmId: report.firmId, surveyId: report.surveyId, reportId: report.id },
    ...{ kind: 'report.shared', role },
    data: {
      label,
      document: reportKindLabels[report.kind as keyof typeof reportKindLabels],
      until: row.expiresAt.toISOString().slice(0, 10),
    },
  });
  return { ...presentShareLink(row, null, now), url: `${input.publicUrl}/shared#token=${token}` };
}
