import { agreementDocument } from '@garboard/contract/quotations';
import type { AgreementDocument } from '@garboard/trade/engagement';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';

/** An accepted agreement that has no PDF yet, as it is to be printed. */
export interface UnprintedAgreement {
  document: AgreementDocument;
  text: string;
  textSha256: string;
  acceptedBy: string;
  acceptedAt: string;
  acceptedFrom: string;
  timeZone: string;
  paper: 'A4' | 'Letter';
}

/** What is to be printed of an accepted quotation; null when there is nothing left to do. */
export async function unprintedAgreement(ctx: Ctx, id: string): Promise<UnprintedAgreement | null> {
  const row = await ctx.tx.quotation.findUnique({
    where: { id },
    include: { survey: { select: { timeZone: true, firm: { select: { paper: true } } } } },
  });
  if (row?.state !== 'accepted' || row.pdfSha256 !== null) return null;
  const { text, textSha256, decidedBy, decidedAt, decidedFrom, survey } = row;
  if (text === null || textSha256 === null || decidedBy === null || decidedAt === null) return null;
  return {
    document: agreementDocument.parse(row.document),
    ...{ text, textSha256, acceptedBy: decidedBy, acceptedAt: decidedAt.toISOString() },
    ...{ acceptedFrom: decidedFrom ?? '', timeZone: survey.timeZone },
    paper: survey.firm.paper === 'Letter' ? 'Letter' : 'A4',
  };
}

/** Files the PDF of an accepted quotation. @returns false when another attempt has filed one: this one isn't needed */
export async function fileAgreement(
  ctx: Ctx,
  { id, sha256, bytes }: { id: string; sha256: string; bytes: number },
): Promise<boolean> {
  const filed = await ctx.tx.quotation.updateMany({
    where: { id, state: 'accepted', pdfSha256: null },
    data: { pdfSha256: sha256, pdfBytes: bytes, version: { increment: 1 } },
  });
  if (filed.count === 0) return false;
  const { firmId, surveyId, revision } = await ctx.tx.quotation.findUniqueOrThrow({ where: { id } });
  await recordEvent(ctx, {
    ...{ firmId, surveyId, kind: 'quotation.filed', role: 'system' },
    data: { revision, sha256 },
  });
  return true;
}
