import { createReadStream } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { JobData } from '@garboard/contract/jobs';
import { keepObject } from '@garboard/core/files/keep-object';
import { enqueue } from '@garboard/core/outbox/enqueue';
import { Refusal } from '@garboard/core/problems';
import { type ClaimedReport, claimReport } from '@garboard/core/reports/claim-report';
import { failReport } from '@garboard/core/reports/fail-report';
import { finishPreview } from '@garboard/core/reports/finish-preview';
import { finishReport } from '@garboard/core/reports/finish-report';
import { reportProgress } from '@garboard/core/reports/report-progress';
import { type Signer, signerOf } from '@garboard/core/signing/signer';
import { inTransaction } from '@garboard/db/database';
import { NoRetryError } from '@garboard/platform/queue';
import { openSealer } from '@garboard/platform/sealing';
import { withSpan } from '@garboard/platform/tracing';
import { printEdges } from '@garboard/report/print-edges';
import { renderFindings, renderReport } from '@garboard/report/render-report';
import type { Attempt, JobDeps } from '../job-deps.ts';
import { BrowserCrash, PageTimeout } from '../render/browser.ts';
import { PrintError, printReport } from '../render/print-report.ts';
import { reportFontFiles, reportFontUrls } from '../render/report-fonts.ts';
import { rendererOf, sealOf } from '../seal/seal-of.ts';
import { sealPdf } from '../seal/seal-pdf.ts';
import { gatherPhotos, PhotoUnready, photoFileName, type Within } from './gather-photos.ts';
import { ClaimLost, Pulse } from './pulse.ts';

const maxPdfBytes = 1024 ** 3;
/** A page takes a second at worst on a small server; common practice, no source. */
const timeoutMs = (photos: number) => 90_000 + photos * 1_000;

interface Rendering extends ClaimedReport {
  firmId: string;
  reportId: string;
  within: Within;
  /** The firm's key, opened before the work is begun; a draft isn't signed. */
  signer: Signer | null;
}

/**
 * Makes the PDF of a report that was asked for and issues it, or of a draft to be looked at. No transaction is open while the browser works.
 *
 * @throws NoRetryError when it can't be printed as it is; other errors may pass by themselves.
 */
export async function renderReportJob(
  deps: JobDeps,
  { firmId, reportId }: JobData<'report.render' | 'finding.preview'>,
  { lastAttempt }: Attempt,
): Promise<void> {
  const { db, store, clock, log } = deps;
  const actor = { kind: 'system', firmIds: [firmId] } as const;
  const within: Within = (work) =>
    inTransaction(db, [firmId], (tx) => work({ actor, tx, store, clock, log }));
  const claimed = await within((ctx) => claimReport(ctx, reportId));
  if (!claimed) return;
  try {
    const signer = claimed.snapshot.preview ? null : await openSigner(deps, { firmId, within });
    await makeReport(deps, { ...claimed, firmId, reportId, within, signer });
  } catch (error) {
    if (error instanceof ClaimLost) return log.warn({ reportId }, 'report taken over by another attempt');
    const hopeless = error instanceof PrintError || error instanceof Refusal;
    if (hopeless || lastAttempt) {
      const problem = problemInWords(error, reportId);
      await within((ctx) => failReport(ctx, { reportId, claim: claimed.claim, problem }));
    }
    throw hopeless ? new NoRetryError(error.message, { cause: error }) : error;
  }
}

async function openSigner(
  { env }: JobDeps,
  { firmId, within }: Pick<Rendering, 'firmId' | 'within'>,
): Promise<Signer> {
  const sealer = await openSealer(env);
  return within((ctx) => signerOf(ctx, firmId, sealer));
}

async function makeReport(deps: JobDeps, rendering: Rendering): Promise<void> {
  const { snapshot, claim, firmId, reportId, within, signer } = rendering;
  const edges = printEdges(snapshot);
  const pulse = new Pulse({ progress: 2, stage: 'Gathering photos' }, (step) =>
    within((ctx) => reportProgress(ctx, { reportId, claim, ...step })),
  );
  const parent = join(deps.env.dataDir, 'print');
  await mkdir(parent, { recursive: true });
  const workDir = await mkdtemp(join(parent, 'report-'));
  try {
    const photos = await gatherPhotos(deps, {
      firmId,
      edges,
      within,
      onGathered: (count) =>
        pulse.show({ progress: 2 + (28 * count) / edges.size, stage: 'Gathering photos' }),
    });
    pulse.show({ progress: 32, stage: 'Laying out pages' });
    const sources = { photoUrl: photoFileName, fontUrls: reportFontUrls };
    const html =
      rendering.findingId !== null && snapshot.kind === 'full'
        ? renderFindings(snapshot, sources)
        : renderReport(snapshot, sources);
    pulse.show({ progress: 36, stage: 'Printing' });
    const printed = await withSpan('print', () =>
      printReport({
        browser: deps.browser,
        html,
        files: [...reportFontFiles, ...photos],
        workDir,
        timeoutMs: timeoutMs(edges.size),
        onProgress: (percent) => pulse.advance(36 + percent * 0.56),
        onRefused: (url) =>
          deps.log.warn({ reportId, url }, 'the report asked for something outside its folder'),
      }),
    );
    const chromium = await deps.browser.version();
    if (signer) {
      pulse.show({ progress: 92, stage: 'Signing' });
      const { request } = sealOf({ snapshot, signer, chromium, at: deps.clock() });
      await sealPdf({ ...request, path: printed.pdfPath });
    }
    pulse.show({ progress: 96, stage: 'Filing' });
    await file(deps, rendering, { ...printed, renderer: rendererOf(chromium) });
  } finally {
    await pulse.stop();
    await rm(workDir, { recursive: true, force: true, maxRetries: 3 });
  }
}

/** Keeps the PDF in the store and issues the report with it, or shows the draft; a PDF that isn't needed after all is collected. */
async function file(
  deps: JobDeps,
  { within, reportId, claim, signer }: Rendering,
  printed: { pdfPath: string; pages: number; renderer: string },
): Promise<void> {
  const staged = await deps.store.stage(createReadStream(printed.pdfPath), { maxBytes: maxPdfBytes });
  const { sha256, bytes } = staged;
  let issued = false;
  try {
    issued = await within(async (ctx) => {
      await keepObject(ctx.tx, staged);
      const { pages, renderer } = printed;
      const made = { reportId, claim, sha256, bytes, pages, renderer };
      return signer ? finishReport(ctx, { ...made, signedBy: signer.subject }) : finishPreview(ctx, made);
    });
  } finally {
    if (!issued) {
      await staged.discard();
      await within((ctx) => enqueue(ctx.tx, 'object.collect', { sha256 })).catch((error: unknown) =>
        deps.log.warn({ err: error, sha256 }, 'a PDF that nothing uses stays in the store'),
      );
    }
  }
  if (!issued) throw new ClaimLost('Another attempt has taken this report over.');
}

function problemInWords(error: unknown, reportId: string): string {
  if (error instanceof PrintError || error instanceof PhotoUnready || error instanceof Refusal) {
    return error.message;
  }
  if (error instanceof PageTimeout) {
    return 'Printing took too long. Try again when the server is less busy.';
  }
  if (error instanceof BrowserCrash) {
    return 'The program that prints the pages stopped several times. The server may be short of memory. Nothing was issued; try again in a while.';
  }
  return `Something went wrong on the server while it was made. Try again; if it happens again, ask whoever runs the server to look up report ${reportId} in the worker’s log.`;
}
