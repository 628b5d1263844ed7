import { reportDataFileName, reportDataSchemaPath, reportDataText } from '@garboard/contract/report-data';
import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import type { Signer } from '@garboard/core/signing/signer';
import { productVersion } from '@garboard/platform/paths';
import { documentTitle } from '@garboard/report/render-report';
import { reportKindLabels } from '@garboard/trade/vocabulary';
import type { SealRequest } from './seal-pdf.ts';

export interface SealInput {
  snapshot: ReportSnapshot;
  signer: Signer;
  /** As the browser names itself, such as HeadlessChrome/131.0.1.2. */
  chromium: string;
  at: Date;
}

const creatorOf = (): string => `Garboard ${productVersion()}`;
const producerOf = (chromium: string): string => `Chromium ${/\/([\d.]+)/.exec(chromium)?.[1] ?? chromium}`;

/** What makes a document's pages, with versions. @param chromium as the browser names itself */
export const rendererOf = (chromium: string): string => `${creatorOf()}, ${producerOf(chromium)}`;

/** What is written into a document's PDF beside its pages, and what made it. */
export function sealOf({ snapshot, signer, chromium, at }: SealInput): {
  request: Omit<SealRequest, 'path'>;
  renderer: string;
} {
  const { firm, survey, surveyor, revision, kind, language } = snapshot;
  const [creator, producer] = [creatorOf(), producerOf(chromium)];
  const document = `${reportKindLabels[kind]}, survey ${survey.number}, revision ${revision}`;
  return {
    renderer: rendererOf(chromium),
    request: {
      signer,
      signedBy: signer.subject,
      reason: `Issued: ${document}`,
      metadata: {
        title: documentTitle(snapshot),
        author: `${surveyor.name}, ${firm.name}`,
        subject: document,
        language,
        creator,
        producer,
        at,
      },
      attachment: {
        name: reportDataFileName,
        mediaType: 'application/json',
        description: `What this document says, as data; JSON Schema at ${reportDataSchemaPath}`,
        content: Buffer.from(reportDataText(snapshot)),
      },
    },
  };
}
