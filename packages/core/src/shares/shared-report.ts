import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import type { reportImageQuery } from '@garboard/contract/reports';
import type { sharedReport } from '@garboard/contract/share-links';
import { widen } from '@garboard/db/database';
import { findShareViewing } from '@garboard/db/special-reads';
import type { ReportKind } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { hashToken } from '../people/tokens.ts';
import { Refusal } from '../problems.ts';
import { getReportData } from '../reports/get-report-data.ts';
import { getReportPdf } from '../reports/get-report-pdf.ts';
import { getReportPhotoImage } from '../reports/get-report-photo-image.ts';
import { liveShareLink } from './share-link.ts';

type SharedLink = Awaited<ReturnType<typeof liveShareLink>>;

/** Who reads: the viewing named in the address, and the secret in the cookie that belongs to it. */
export interface Reader {
  viewingId: string;
  viewing: string | undefined;
}

/** What is shared, in short. @param viewing its opening */
export async function presentShared(
  ctx: Ctx,
  link: SharedLink,
  viewing: { id: string; expiresAt: Date },
): Promise<z.output<typeof sharedReport>> {
  const report = await ctx.tx.report.findUniqueOrThrow({
    where: { id: link.reportId },
    select: {
      ...{ kind: true, revision: true, issuedAt: true, pages: true, bytes: true, sha256: true },
      verificationCode: true,
      survey: {
        select: { number: true, vessel: { select: { name: true } }, firm: { select: { name: true } } },
      },
    },
  });
  const { kind, revision, issuedAt, survey } = report;
  const later = await ctx.tx.report.findFirst({
    where: { surveyId: link.surveyId, kind, state: 'issued', revision: { gt: revision ?? 0 } },
    select: { id: true },
  });
  return {
    id: viewing.id,
    expiresAt: viewing.expiresAt.toISOString(),
    linkExpiresAt: link.expiresAt.toISOString(),
    sharedBy: link.madeByName,
    firmName: survey.firm.name,
    vesselName: survey.vessel.name,
    surveyNumber: survey.number,
    kind: kind as ReportKind,
    revision: revision ?? 1,
    issuedAt: (issuedAt ?? viewing.expiresAt).toISOString(),
    superseded: later !== null,
    pages: report.pages,
    bytes: report.bytes,
    sha256: report.sha256,
    verificationCode: report.verificationCode,
  };
}

/** The link that a reader still reads by, and a context that acts for its firm. @throws Refusal `link-spent` */
async function beingRead(ctx: Ctx, { viewingId, viewing }: Reader) {
  const found = viewing
    ? await findShareViewing(ctx.tx, { id: viewingId, tokenHash: hashToken(viewing) })
    : null;
  if (!found)
    throw new Refusal('link-spent', 'Reading has timed out. Open the link you were given once more.');
  await widen(ctx.tx, [found.firm_id]);
  const within: Ctx = { ...ctx, actor: { kind: 'system', firmIds: [found.firm_id] } };
  return { within, link: await liveShareLink(within, found.share_link_id), expiresAt: found.expires_at };
}

/** What is shared. @throws Refusal `link-spent` once the link, the viewing or its maker's own sight has ended */
export async function getSharedReport(ctx: Ctx, reader: Reader): Promise<z.output<typeof sharedReport>> {
  const { within, link, expiresAt } = await beingRead(ctx, reader);
  return presentShared(within, link, { id: reader.viewingId, expiresAt });
}

/** What the shared report says. @throws Refusal `link-spent` */
export async function getSharedReportData(ctx: Ctx, reader: Reader): Promise<ReportSnapshot> {
  const { within, link } = await beingRead(ctx, reader);
  return getReportData(within, link.reportId);
}

/** The shared report's file. @throws Refusal `link-spent` */
export async function getSharedReportPdf(ctx: Ctx, reader: Reader): Promise<ServedFile> {
  const { within, link } = await beingRead(ctx, reader);
  return getReportPdf(within, link.reportId);
}

/** A photo of the shared report. @throws Refusal `link-spent`, `not-found` */
export async function getSharedReportPhotoImage(
  ctx: Ctx,
  input: Reader & { photoId: string; query: z.output<typeof reportImageQuery> },
): Promise<ServedFile> {
  const { within, link } = await beingRead(ctx, input);
  const { photoId, query } = input;
  // Kept nowhere: access by a link ends at once.
  return {
    ...(await getReportPhotoImage(within, { reportId: link.reportId, photoId, query })),
    immutable: false,
  };
}
