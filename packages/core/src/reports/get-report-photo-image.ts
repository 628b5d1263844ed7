import type { reportImageQuery } from '@garboard/contract/reports';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { pictureFile } from '../photos/picture-file.ts';
import { notFound, wrongState } from '../problems.ts';
import { loadReport } from './load-report.ts';

export interface GetReportPhotoImage {
  reportId: string;
  photoId: string;
  query: z.output<typeof reportImageQuery>;
}

/**
 * Which stored file is a size of a photo as this report shows it, for whoever may read the report's PDF. Of reports
 * from before pictures were kept it is the photo's present one.
 *
 * @throws Refusal `not-found`; `wrong-state` while the report has not been issued.
 */
export async function getReportPhotoImage(ctx: Ctx, input: GetReportPhotoImage): Promise<ServedFile> {
  const { reportId, photoId, query } = input;
  const report = await loadReport(ctx, reportId);
  const shown = await ctx.tx.reportPhoto.findUnique({
    where: { reportId_photoId: { reportId: report.id, photoId } },
    include: { photo: true },
  });
  if (!shown) throw notFound('photo');
  if (report.state !== 'issued') {
    throw wrongState('This report has not been issued yet; its photos are there once its state is “issued”.');
  }
  const kept = shown.screenHash !== null;
  const { thumbHash, screenHash, printHash } = kept ? shown : shown.photo;
  // What was issued never changes under this address.
  return {
    ...pictureFile({ ...shown.photo, thumbHash, screenHash, printHash }, query.size),
    immutable: kept,
  };
}
