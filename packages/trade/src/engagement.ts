import { type Line, taxByRate, writtenAmount, writtenQuantity, writtenRate } from './fees.ts';

/** When an issued report is handed over. */
export const releaseRuleLabels = {
  'at-once': 'As soon as it is issued',
  'when-paid': 'When it is paid for',
  'on-word': 'When the principal says so',
} as const;

export const quotationStateLabels = {
  draft: 'Draft',
  sent: 'Sent, awaiting the client',
  accepted: 'Accepted',
  declined: 'Declined',
  withdrawn: 'Withdrawn',
} as const;

export const visitStateLabels = {
  arranged: 'Arranged',
  attended: 'Attended',
  cancelled: 'Cancelled',
} as const;

export const visitAnswerLabels = {
  asked: 'Asked, no answer yet',
  confirmed: 'Confirmed',
  declined: 'Declined',
} as const;

export const invoiceStateLabels = {
  draft: 'Draft',
  sent: 'Sent',
  'part-paid': 'Partly paid',
  paid: 'Paid',
  void: 'Void',
} as const;

export type ReleaseRule = keyof typeof releaseRuleLabels;
export type QuotationState = keyof typeof quotationStateLabels;
export type VisitState = keyof typeof visitStateLabels;
export type VisitAnswer = keyof typeof visitAnswerLabels;
export type InvoiceState = keyof typeof invoiceStateLabels;

const keys = <T extends Record<string, string>>(labels: T) =>
  Object.keys(labels) as [keyof T & string, ...(keyof T & string)[]];
export const releaseRules = keys(releaseRuleLabels);
export const quotationStates = keys(quotationStateLabels);
export const visitStates = keys(visitStateLabels);
export const visitAnswers = keys(visitAnswerLabels);
export const invoiceStates = keys(invoiceStateLabels);

/** Where an invoice stands when this much of it has come in. */
export function invoiceStateAt(paid: number, total: number): 'sent' | 'part-paid' | 'paid' {
  if (paid >= total) return 'paid';
  return paid > 0 ? 'part-paid' : 'sent';
}

/**
 * Whether an issued report is withheld. Paid for means that something was asked and nothing of it is missing: of the
 * invoices that stand, all are paid, and there is one.
 */
export function isHeld(
  rule: ReleaseRule,
  { wordGiven, invoices }: { wordGiven: boolean; invoices: readonly { state: string }[] },
): boolean {
  if (rule === 'at-once' || wordGiven) return false;
  if (rule === 'on-word') return true;
  const standing = invoices.filter(({ state }) => state !== 'draft' && state !== 'void');
  return standing.length === 0 || standing.some(({ state }) => state !== 'paid');
}

/** What a client is asked to accept, frozen when it is sent. Days are `YYYY-MM-DD`, money in minor units. */
export interface AgreementDocument {
  firm: { name: string; addressLines: string[]; email: string | null; phone: string | null };
  addressee: string;
  survey: { number: string; purpose: string };
  vessel: { name: string; particulars: string };
  revision: number;
  sentOn: string;
  validUntil: string;
  currency: string;
  taxName: string;
  lines: Line[];
  net: number;
  tax: number;
  total: number;
  scope: string;
  terms: { version: number; text: string };
}

/** A part of the agreement under its heading: paragraphs of plain text. */
export interface AgreementPart {
  title: string;
  paragraphs: string[];
}

const day = (value: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${value}T00:00:00Z`),
  );

const paragraphsOf = (text: string): string[] =>
  text
    .split(/\n{2,}/)
    .map((p) => p.trim())
    .filter((p) => p !== '');

/** What the tax is called and its rate: `VAT 20%`. */
export const taxWords = (taxName: string, taxRate: number): string =>
  `${taxName === '' ? 'Tax' : taxName} ${writtenRate(taxRate)}`;

/** The words that stand before the fee: between whom, about what. */
export function agreementOpening(d: AgreementDocument): string[] {
  return [
    `${d.firm.name} offers ${d.addressee} the survey described here, for the fee and on the terms below.`,
    `Vessel: ${d.vessel.name}${d.vessel.particulars === '' ? '' : ` (${d.vessel.particulars})`}. Purpose: ${d.survey.purpose}. Survey number ${d.survey.number}.`,
    `Offered on ${day(d.sentOn)}; it can be accepted until ${day(d.validUntil)}.`,
  ];
}

/** Scope and terms, which follow the fee. */
export function agreementParts(d: AgreementDocument): AgreementPart[] {
  return [
    { title: 'What is surveyed', paragraphs: paragraphsOf(d.scope) },
    { title: `Terms of business, version ${d.terms.version}`, paragraphs: paragraphsOf(d.terms.text) },
  ];
}

/** The title of the agreement. */
export const agreementTitle = (d: AgreementDocument): string =>
  `Quotation and terms for survey ${d.survey.number}, revision ${d.revision}`;

/**
 * The exact text that is accepted, of which the record keeps the SHA-256: the same document always gives the same
 * text. Lines end with a line feed.
 */
export function agreementText(d: AgreementDocument): string {
  const money = (minor: number) => writtenAmount(minor, d.currency);
  const fee = d.lines.map((line) => {
    const quantity = writtenQuantity(line);
    const reckoned = quantity === '' ? '' : ` (${quantity} at ${money(line.price)})`;
    return `${line.text}${reckoned}: ${money(line.net)}`;
  });
  const taxes = taxByRate(d.lines)
    .filter(({ taxRate }) => taxRate > 0)
    .map(({ taxRate, net, tax }) => `${taxWords(d.taxName, taxRate)} on ${money(net)}: ${money(tax)}`);
  const parts = [
    { title: 'Fee', paragraphs: [...fee, ...taxes, `Total: ${money(d.total)}`] },
    ...agreementParts(d),
  ].map(({ title, paragraphs }) => `${title}\n\n${paragraphs.join('\n\n')}`);
  return `${[agreementTitle(d), ...agreementOpening(d), ...parts].join('\n\n')}\n`;
}
