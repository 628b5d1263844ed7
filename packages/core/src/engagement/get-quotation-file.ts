import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { wrongState } from '../problems.ts';
import { type LoadedQuotation, loadQuotation } from './load-quotation.ts';

const nameOf = ({ survey, revision }: LoadedQuotation, ending: string) =>
  `${survey.number} quotation and terms r${revision}.${ending}`;

/** The exact text that was sent, and what to call the file. @throws Refusal `not-found`; `wrong-state` for a draft */
export async function getQuotationText(ctx: Ctx, id: string): Promise<{ text: string; fileName: string }> {
  const quotation = await loadQuotation(ctx, id);
  if (quotation.text === null)
    throw wrongState('A draft has no text to accept yet; it is made when it is sent.');
  return { text: quotation.text, fileName: nameOf(quotation, 'txt') };
}

/** Which stored file is the PDF of the accepted text. @throws Refusal `not-found`; `wrong-state` while there is none */
export async function getQuotationPdf(ctx: Ctx, id: string): Promise<ServedFile> {
  const quotation = await loadQuotation(ctx, id);
  if (quotation.pdfSha256 === null) {
    throw wrongState(
      quotation.state === 'accepted'
        ? 'The PDF of the accepted text is being made; try again in a moment.'
        : 'A PDF is kept once the quotation is accepted.',
    );
  }
  const { pdfSha256: sha256 } = quotation;
  return {
    ...{ sha256, mediaType: 'application/pdf', fileName: nameOf(quotation, 'pdf') },
    ...{ immutable: false, download: false },
  };
}
