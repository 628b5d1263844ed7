import type { AgreementDocument } from '@garboard/trade/engagement';
import { agreementTitle } from '@garboard/trade/engagement';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { Agreement } from './agreement.tsx';
import { shortened } from './format.ts';
import { bodyStyles } from './styles/body-styles.ts';
import { fontFaces, pagesWith } from './styles/page-styles.ts';
import { sectionStyles } from './styles/section-styles.ts';

/** An agreement as it was accepted: by whom, when (ISO 8601, UTC) and from which network address. */
export interface AcceptedAgreement {
  document: AgreementDocument;
  textSha256: string;
  acceptedBy: string;
  acceptedAt: string;
  acceptedFrom: string;
  /** IANA zone in which the time is printed. */
  timeZone: string;
  paper: 'A4' | 'Letter';
}

const agreementStyles = `
.fee td, .fee tfoot th { text-align: end; white-space: nowrap; }
.fee thead th + th { text-align: end; }
.fee tbody th { font-weight: 400; }
.fee tfoot tr:last-child > * { font-weight: 600; border-top: 0.4pt solid var(--ink); }
.fee tfoot th { font-weight: inherit; }
.letter > .acceptance { border-top: 0.4pt solid var(--ink); margin-top: 9mm; }
.letter .acceptance h2 { margin-top: 3mm; }
.fingerprint { overflow-wrap: anywhere; }
`;

/**
 * Turns an accepted agreement into one HTML page, ready to be printed; the same agreement and addresses always give
 * the same string.
 *
 * @param fontUrls the address of each file of `reportFonts`, by its name
 * @throws Error when the address of a font is missing
 */
export function renderAgreement(
  agreement: AcceptedAgreement,
  fontUrls: Readonly<Record<string, string>>,
): string {
  const { document, paper } = agreement;
  const head = renderToStaticMarkup([
    createElement('meta', { key: 'charset', charSet: 'utf-8' }),
    createElement('title', { key: 'title' }, `${document.vessel.name}: ${agreementTitle(document)}`),
    createElement('meta', { key: 'author', name: 'author', content: document.firm.name }),
  ]);
  const pages = pagesWith({
    paper,
    left: shortened(document.vessel.name, 60),
    right: `Survey ${document.survey.number}, quotation revision ${document.revision}`,
    foot: shortened(document.firm.name, 70),
    numbersFirst: true,
  });
  const styles = [fontFaces(fontUrls), pages, bodyStyles, sectionStyles, agreementStyles].join('\n');
  const body = renderToStaticMarkup(createElement('body', null, createElement(Agreement, { agreement })));
  return `<!doctype html>\n<html lang="en"><head>${head}<style>${styles}</style></head>${body}</html>\n`;
}
