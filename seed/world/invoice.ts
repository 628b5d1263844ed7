import { PDFDocument, rgb, StandardFonts } from 'pdf-lib';
import type { InvoiceSpec } from './types.ts';

const A4 = { width: 595.28, height: 841.89 };
const margin = 56;
const ink = rgb(0.1, 0.13, 0.2);

/**
 * Makes an invoice as a one-page A4 PDF. `loadedAt` is the day the world's day offsets count from.
 * The same input gives the same bytes. Texts must be Latin (the standard PDF fonts have no other letters).
 */
export async function invoicePdf(invoice: InvoiceSpec, loadedAt: Date): Promise<Uint8Array> {
  const date = new Date(loadedAt.getTime() + invoice.day * 86_400_000);
  const pdf = await PDFDocument.create();
  pdf.setTitle(`Invoice ${invoice.number}`);
  pdf.setAuthor(invoice.from);
  pdf.setCreationDate(date);
  pdf.setModificationDate(date);
  const regular = await pdf.embedFont(StandardFonts.Helvetica);
  const bold = await pdf.embedFont(StandardFonts.HelveticaBold);
  const page = pdf.addPage([A4.width, A4.height]);
  const money = (minor: number): string =>
    new Intl.NumberFormat('en-GB', {
      style: 'currency',
      currency: invoice.currency,
      currencyDisplay: 'code',
    })
      .format(minor / 100)
      .replaceAll('\u00a0', ' ');

  let y = A4.height - margin;
  const line = (text: string, size = 10.5, font = regular, drop = 16): void => {
    y -= drop;
    page.drawText(text, { x: margin, y, size, font, color: ink });
  };
  const right = (text: string, font = regular): void => {
    const width = font.widthOfTextAtSize(text, 10.5);
    page.drawText(text, { x: A4.width - margin - width, y, size: 10.5, font, color: ink });
  };
  const rule = (): void => {
    y -= 10;
    page.drawLine({
      start: { x: margin, y },
      end: { x: A4.width - margin, y },
      thickness: 0.6,
      color: ink,
    });
  };

  line(invoice.from, 20, bold, 20);
  line(invoice.fromAddress);
  line(`Invoice ${invoice.number}`, 14, bold, 48);
  line(date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }));
  line(`To: ${invoice.to}`, 10.5, regular, 28);
  line(`Vessel: ${invoice.vessel}`);
  rule();
  for (const item of invoice.lines) {
    line(item.text, 10.5, regular, 20);
    right(money(item.amountMinor));
  }
  rule();
  line('Total', 10.5, bold, 20);
  right(money(invoice.lines.reduce((sum, item) => sum + item.amountMinor, 0)), bold);
  line('Invented for demonstration. Not a demand for payment.', 9, regular, 48);
  return pdf.save();
}
