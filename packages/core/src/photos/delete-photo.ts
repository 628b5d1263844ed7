import { type ReportKind, reportKindLabels } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { notFound, wrongState } from '../problems.ts';
import { lockSurvey } from '../surveys/load-survey.ts';
import { loadPhoto } from './load-photo.ts';
import { authorisePhotoWriting } from './photo-writing.ts';

/**
 * Removes a photo that nothing uses, and in time its files.
 *
 * @throws Refusal `not-found`, `not-allowed`; `wrong-state` while a finding or a report shows it.
 */
export async function deletePhoto(ctx: Ctx, id: string): Promise<void> {
  const photo = await loadPhoto(ctx, id);
  const role = authorisePhotoWriting(ctx, photo.survey);
  await lockSurvey(ctx, photo.surveyId);
  const finding = await ctx.tx.finding.findFirst({
    where: { photos: { some: { photoId: id } } },
    orderBy: { number: 'asc' },
  });
  if (finding)
    throw wrongState(
      `Finding ${finding.number}, “${finding.title}”, shows this photo. Take it out of the finding first.`,
    );
  const report = await ctx.tx.report.findFirst({ where: { photos: { some: { photoId: id } } } });
  if (report) {
    const label = reportKindLabels[report.kind as ReportKind].toLowerCase();
    throw wrongState(`The ${label}, revision ${report.revision}, shows this photo, so it must be kept.`);
  }
  const prints = await ctx.tx.photoPrint.findMany({ where: { photoId: id }, select: { sha256: true } });
  const gone = await ctx.tx.photo.deleteMany({ where: { id } });
  if (gone.count === 0) throw notFound('photo');
  await ctx.tx.survey.updateMany({
    where: { id: photo.surveyId, leadPhotoId: id },
    data: { leadPhotoId: null },
  });
  await ctx.tx.survey.update({ where: { id: photo.surveyId }, data: { photoCount: { decrement: 1 } } });
  const { firmId, surveyId, fileName } = photo;
  await recordEvent(ctx, { firmId, surveyId, kind: 'photo.deleted', role, data: { fileName } });
  const own = [photo.sha256, photo.thumbHash, photo.screenHash, photo.printHash];
  const hashes = new Set([...own, ...prints.map((print) => print.sha256)]);
  for (const sha256 of hashes) if (sha256) await enqueue(ctx.tx, 'object.collect', { sha256 });
}
