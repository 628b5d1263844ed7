import { createReadStream } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { JobData } from '@garboard/contract/jobs';
import { fileAgreement, unprintedAgreement } from '@garboard/core/engagement/print-agreement';
import { keepObject } from '@garboard/core/files/keep-object';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { inTransaction } from '@garboard/db/database';
import { renderAgreement } from '@garboard/report/render-agreement';
import type { JobDeps } from '../job-deps.ts';
import { printReport } from '../render/print-report.ts';
import { reportFontFiles, reportFontUrls } from '../render/report-fonts.ts';
import type { Within } from './gather-photos.ts';

const maxPdfBytes = 64 * 1024 ** 2;
const timeoutMs = 90_000;

/** Keeps the accepted text of a quotation as PDF in the store, by its hash. Doing it twice leaves the first. */
export async function printQuotationJob(
  deps: JobDeps,
  { firmId, quotationId }: JobData<'quotation.print'>,
): Promise<void> {
  const { db, store, clock, log } = deps;
  const actor = { kind: 'system', firmIds: [firmId] } as const;
  const within: Within = (work) =>
    inTransaction(db, [firmId], (tx) => work({ actor, tx, store, clock, log }));
  const agreement = await within((ctx) => unprintedAgreement(ctx, quotationId));
  if (!agreement) return;
  const parent = join(deps.env.dataDir, 'print');
  await mkdir(parent, { recursive: true });
  const workDir = await mkdtemp(join(parent, 'quotation-'));
  try {
    const { pdfPath } = await printReport({
      browser: deps.browser,
      html: renderAgreement(agreement, reportFontUrls),
      files: reportFontFiles,
      workDir,
      timeoutMs,
      onRefused: (url) => log.warn({ quotationId, url }, 'the text asked for something outside its folder'),
    });
    await file(deps, within, { quotationId, pdfPath });
  } finally {
    await rm(workDir, { recursive: true, force: true, maxRetries: 3 });
  }
}

async function file(
  { store }: JobDeps,
  within: Within,
  { quotationId, pdfPath }: { quotationId: string; pdfPath: string },
): Promise<void> {
  const staged = await store.stage(createReadStream(pdfPath), { maxBytes: maxPdfBytes });
  const { sha256, bytes } = staged;
  let filed = false;
  try {
    filed = await within(async (ctx) => {
      await keepObject(ctx.tx, staged);
      return fileAgreement(ctx, { id: quotationId, sha256, bytes });
    });
  } finally {
    if (!filed) {
      await staged.discard();
      await within((ctx) => enqueue(ctx.tx, 'object.collect', { sha256 }));
    }
  }
}
