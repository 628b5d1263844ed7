import { isCurrency } from '@garboard/trade/costs';
import { quotationStates, releaseRules } from '@garboard/trade/engagement';
import { largestTotal } from '@garboard/trade/fees';
import { z } from 'zod';
import { day, id, instant, line, sha256, text, versioned } from './common.ts';

const price = z.int('Give a whole number of minor units, such as cents.').min(0).max(largestTotal);

/** An ISO 4217 currency. */
export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/, 'Write the currency’s three letters, such as EUR.')
  .refine(isCurrency, 'Must be a currency of ISO 4217, such as EUR.')
  .meta({ example: 'EUR' });

export const taxRate = z
  .int()
  .min(0)
  .max(100_000)
  .meta({ description: 'In thousandths of a percent', example: 20_000 });

const rateFields = {
  currency,
  perLength: price.meta({ description: 'For each metre or foot of length overall, in minor units' }),
  lengthUnit: z.enum(['m', 'ft']),
  perHour: price,
  perDistance: price,
  distanceUnit: z.enum(['km', 'mile']),
  minimum: price.meta({ description: 'The least that length and hours come to, in minor units' }),
  taxName: text(40).meta({ description: 'As it is called on invoices', example: 'VAT' }),
  taxRate,
  quotationDays: z.int().min(1).max(365).meta({ description: 'For how many days a quotation stands' }),
  paymentDays: z.int().min(0).max(365).meta({ description: 'After how many days an invoice is due' }),
  releaseRule: z.enum(releaseRules).meta({ description: 'When issued reports are handed over' }),
  paymentWords: text(1_000).meta({ description: 'How to pay, printed on invoices; never card data' }),
};

/** What a firm charges, its terms of payment and its rule of handing over. */
export const firmRates = z.object({ ...rateFields, ...versioned }).meta({ id: 'FirmRates' });
export type FirmRates = z.infer<typeof firmRates>;
export const firmRatesPut = z.strictObject(rateFields);

export const firmTerms = z
  .object({ version: z.int(), text: z.string(), savedAt: instant, savedBy: z.string() })
  .meta({ id: 'FirmTerms' });
export const firmTermsCreate = z.strictObject({
  text: text(60_000).refine((s) => s !== '', 'Write the terms before you save them.'),
});

/** A line that the firm writes; net and tax are reckoned from it. */
export const lineInput = z.strictObject({
  text: line(200),
  quantity: z
    .int()
    .min(1)
    .max(1_000_000_000)
    .default(1_000)
    .meta({ description: 'In thousandths of the unit: 11280 is 11.28' }),
  unit: text(12).default(''),
  price: z
    .int()
    .min(-largestTotal)
    .max(largestTotal)
    .meta({ description: 'For one unit, in minor units; below zero for a reduction' }),
  taxRate,
});
export const reckonedLine = z
  .object({
    text: z.string(),
    quantity: z.int(),
    unit: z.string(),
    price: z.int(),
    taxRate: z.int(),
    net: z.int(),
    tax: z.int(),
  })
  .meta({ id: 'ReckonedLine' });
export const lines = z.array(lineInput).min(1, 'Give at least one line.').max(60);

const quotationFields = {
  partyId: id.meta({ description: 'The party who is to pay' }),
  lines,
  scope: text(20_000).refine((s) => s !== '', 'Say what is surveyed.'),
  validUntil: day.meta({ description: 'The last day on which it can be accepted' }),
};
export const quotationCreate = z.strictObject(quotationFields);
export const quotationPatch = z.strictObject(quotationFields).partial();

/** The firm as it stands on what was sent. */
const agreement = z
  .object({
    firm: z.object({
      name: z.string(),
      addressLines: z.array(z.string()),
      email: z.string().nullable(),
      phone: z.string().nullable(),
    }),
    addressee: z.string(),
    survey: z.object({ number: z.string(), purpose: z.string() }),
    vessel: z.object({ name: z.string(), particulars: z.string() }),
    revision: z.int(),
    sentOn: day,
    validUntil: day,
    currency: z.string(),
    taxName: z.string(),
    lines: z.array(reckonedLine),
    net: z.int(),
    tax: z.int(),
    total: z.int(),
    scope: z.string(),
    terms: z.object({ version: z.int(), text: z.string() }),
  })
  .meta({ id: 'Agreement', description: 'What the client is asked to accept, frozen when it was sent' });
export type Agreement = z.infer<typeof agreement>;
export const agreementDocument = agreement;

export const quotation = z
  .object({
    id,
    surveyId: id,
    revision: z.int(),
    state: z.enum(quotationStates),
    expired: z.boolean().meta({ description: 'Sent, and past its last day' }),
    partyId: id.nullable(),
    addressee: z.string(),
    currency: z.string(),
    lines: z.array(reckonedLine),
    net: z.int(),
    tax: z.int(),
    total: z.int(),
    scope: z.string(),
    validUntil: day,
    document: agreement.nullable().meta({ description: 'Null while it is a draft' }),
    textSha256: sha256.nullable().meta({ description: 'Of the exact text, UTF-8, that is accepted' }),
    sentAt: instant.nullable(),
    decidedAt: instant.nullable(),
    decidedBy: z.string().nullable().meta({ description: 'As typed to accept it' }),
    decidedFrom: z.string().nullable().meta({ description: 'The network address it was decided from' }),
    reason: z.string(),
    pdfSha256: sha256.nullable().meta({ description: 'Of the accepted text as PDF, once it is made' }),
    ...versioned,
  })
  .meta({ id: 'Quotation' });
export type QuotationView = z.infer<typeof quotation>;

export const quotationAccept = z.strictObject({
  typedName: line(120).meta({ description: 'The client’s own name, typed by the client' }),
  textSha256: sha256.meta({ description: 'Of the text that was read: what is accepted is named by it' }),
});
export const givenReason = z.strictObject({ reason: line(1_000) });

export const surveyRelease = z
  .object({
    rule: z.enum(releaseRules),
    settled: z.boolean().meta({
      description: 'Whether the rule was fixed for this survey, which its first issue does',
    }),
    held: z.boolean().meta({ description: 'Whether what was issued is withheld from every party' }),
    wordAt: instant.nullable(),
    wordBy: z.string().nullable(),
    reason: z.string(),
  })
  .meta({ id: 'SurveyRelease' });
