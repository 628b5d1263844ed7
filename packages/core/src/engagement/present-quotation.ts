import { agreementDocument, type QuotationView, reckonedLine } from '@garboard/contract/quotations';
import type { Prisma } from '@garboard/db/database';
import { dayIn } from '@garboard/trade/due-dates';
import type { QuotationState } from '@garboard/trade/engagement';
import type { Ctx } from '../context.ts';

/** A calendar day as the database keeps it. */
export const dateOf = (day: string): Date => new Date(`${day}T00:00:00Z`);

/** A calendar day as it travels. */
export const dayOf = (date: Date): string => date.toISOString().slice(0, 10);

type Row = Omit<Prisma.QuotationGetPayload<object>, 'text'>;

/** @param timeZone of the survey, by which its last day ends */
export function presentQuotation(ctx: Ctx, row: Row, timeZone: string): QuotationView {
  const validUntil = dayOf(row.validUntil);
  return {
    id: row.id,
    surveyId: row.surveyId,
    revision: row.revision,
    state: row.state as QuotationState,
    expired: row.state === 'sent' && validUntil < dayIn(timeZone, ctx.clock()),
    partyId: row.partyId,
    addressee: row.addressee,
    currency: row.currency,
    lines: reckonedLine.array().parse(row.lines),
    net: row.net,
    tax: row.tax,
    total: row.total,
    scope: row.scope,
    validUntil,
    document: row.document === null ? null : agreementDocument.parse(row.document),
    textSha256: row.textSha256,
    sentAt: row.sentAt?.toISOString() ?? null,
    decidedAt: row.decidedAt?.toISOString() ?? null,
    decidedBy: row.decidedBy,
    decidedFrom: row.decidedFrom,
    reason: row.reason,
    pdfSha256: row.pdfSha256,
    version: row.version,
  };
}
