import type { ReportSnapshot, SurveyReportSnapshot } from '@garboard/contract/report-snapshot';
import { purposeLabels, reportKindLabels } from '@garboard/trade/vocabulary';
import { createElement, type ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { DocumentBody } from './document.tsx';
import { FindingPages } from './finding-page.tsx';
import { revisionWords } from './format.ts';
import { bodyStyles } from './styles/body-styles.ts';
import { draftStyles } from './styles/draft-styles.ts';
import { fontFaces, pageBoxes } from './styles/page-styles.ts';
import { recordStyles } from './styles/record-styles.ts';
import { sectionStyles } from './styles/section-styles.ts';
import { verificationStyles } from './styles/verification-styles.ts';
import { worksheetStyles } from './styles/worksheet-styles.ts';
import { Verification, VerificationStrip } from './verification.tsx';

/** Where the files lie that the HTML refers to. */
export interface ReportFiles {
  /** The address of a photo's print-size file, by the photo's id. */
  photoUrl: (photoId: string) => string;
  /** The address of each file of `reportFonts`, by its name. */
  fontUrls: Readonly<Record<string, string>>;
}

/** The title of the document, as it stands in the PDF's metadata and the reader's window. */
export function documentTitle(snapshot: ReportSnapshot): string {
  const { vessel, survey, kind } = snapshot;
  const what = kind === 'full' ? purposeLabels[survey.purpose] : reportKindLabels[kind];
  return `${vessel.name}: ${what} ${survey.number}, ${revisionWords(snapshot)}`;
}

const isLetter = ({ kind }: ReportSnapshot): boolean =>
  kind === 'clearance-letter' || kind === 'status-letter';

/**
 * Turns a frozen snapshot into one HTML page, ready to be printed. The same snapshot and addresses always give the
 * same string. Elements with `data-page-of` are left empty for the printer to fill with page numbers.
 *
 * @throws Error when the address of a font is missing.
 */
export function renderReport(snapshot: ReportSnapshot, files: ReportFiles): string {
  return renderPage(snapshot, files, [
    createElement(DocumentBody, { key: 'document', snapshot, photoUrl: files.photoUrl }),
    createElement(isLetter(snapshot) ? VerificationStrip : Verification, { key: 'verification', snapshot }),
  ]);
}

/**
 * The findings of a snapshot as the report prints them, without the rest of it; to look at one while it is written.
 *
 * @throws Error when the address of a font is missing.
 */
export function renderFindings(snapshot: SurveyReportSnapshot, files: ReportFiles): string {
  return renderPage(snapshot, files, [
    createElement(FindingPages, { key: 'findings', snapshot, photoUrl: files.photoUrl }),
  ]);
}

function renderPage(snapshot: ReportSnapshot, { fontUrls }: ReportFiles, parts: ReactNode[]): string {
  const head = renderToStaticMarkup([
    createElement('meta', { key: 'charset', charSet: 'utf-8' }),
    createElement('title', { key: 'title' }, documentTitle(snapshot)),
    createElement('meta', { key: 'author', name: 'author', content: snapshot.firm.name }),
  ]);
  // The style sheet is the only part not escaped by React; whatever comes from the snapshot into it passes
  // through `cssString`.
  const styles = [
    fontFaces(fontUrls),
    pageBoxes(snapshot),
    bodyStyles,
    sectionStyles,
    recordStyles,
    worksheetStyles,
    verificationStyles,
    draftStyles(snapshot),
  ].join('\n');
  const body = renderToStaticMarkup(createElement('body', null, parts));
  return `<!doctype html>\n<html lang="${snapshot.language}"><head>${head}<style>${styles}</style></head>${body}</html>\n`;
}
