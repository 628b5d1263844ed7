import { invoiceStates } from '@garboard/trade/engagement';
import { z } from 'zod';
import { day, id, instant, pageQuery, text, versioned } from './common.ts';
import { currency, lines, reckonedLine } from './quotations.ts';

const fields = {
  billTo: text(600)
    .refine((s) => s !== '', 'Say to whom it is made out.')
    .meta({ description: 'Name and address, line by line' }),
  lines,
};
/** A draft: from an accepted quotation, or from lines of its own. */
export const invoiceCreate = z.strictObject({
  quotationId: id.optional().meta({ description: 'Takes lines, currency and addressee from it' }),
  billTo: fields.billTo.optional(),
  lines: fields.lines.optional(),
  currency: currency.optional(),
});
export const invoicePatch = z.strictObject(fields).partial();

export const invoicePayment = z
  .object({
    id,
    amount: z.int(),
    paidOn: day,
    note: z.string(),
    recordedBy: z.string(),
    recordedAt: instant,
  })
  .meta({ id: 'InvoicePayment' });

export const invoice = z
  .object({
    id,
    surveyId: id,
    surveyNumber: z.string(),
    vesselName: z.string(),
    quotationId: id.nullable(),
    number: z.string().nullable().meta({ example: '2026-0007', description: 'Null while it is a draft' }),
    state: z.enum(invoiceStates),
    overdue: z.boolean(),
    billTo: z.string(),
    currency: z.string(),
    taxName: z.string(),
    lines: z.array(reckonedLine),
    net: z.int(),
    tax: z.int(),
    total: z.int(),
    paid: z.int(),
    issuedOn: day.nullable(),
    dueOn: day.nullable(),
    reason: z.string().meta({ description: 'Why it was made void' }),
    paymentWords: z.string().meta({ description: 'How the firm asks to be paid' }),
    payments: z.array(invoicePayment),
    ...versioned,
  })
  .meta({ id: 'Invoice' });
export type InvoiceView = z.infer<typeof invoice>;

export const invoiceFilter = z.object({
  state: z.enum([...invoiceStates, 'unpaid', 'overdue']).optional(),
  q: z
    .string()
    .max(100)
    .optional()
    .meta({ description: 'Part of a number, a vessel’s name or an addressee' }),
});
export const invoiceQuery = pageQuery.extend(invoiceFilter.shape);

export const paymentCreate = z.strictObject({
  amount: z.int('Give whole minor units.').min(1, 'Give the amount that came in.').max(2_000_000_000),
  paidOn: day,
  note: text(200).default('').meta({ description: 'Such as the bank’s reference; never card data' }),
});
export const paymentParams = z.object({ id, paymentId: id });
