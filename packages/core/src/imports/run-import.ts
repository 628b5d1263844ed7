import type { FirmRole } from '@garboard/trade/vocabulary';
import type { PersonActor } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import type { Upload } from '../files/received-file.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { addPhoto } from '../photos/add-photo.ts';
import { authorisePhotoWriting } from '../photos/photo-writing.ts';
import { notAllowed } from '../problems.ts';
import { loadSurvey, lockSurvey } from '../surveys/load-survey.ts';

/** An import as the worker takes it up. */
export interface RunningImport {
  surveyId: string;
  timeZone: string;
  zipName: string;
  /** Null when its photos come one by one. */
  zipSha256: string | null;
  /** Names of photos in the ZIP that were neither taken nor refused yet. */
  left: string[];
  /** Whoever brings it in, in the role that they have now. */
  actor: PersonActor;
}

/**
 * Takes up an import that was begun, also one whose worker died. Null when there is nothing to do any more.
 *
 * @throws Refusal `not-allowed` when whoever began it has left the firm
 */
export async function takeUpImport(ctx: Ctx, id: string): Promise<RunningImport | null> {
  const taken = await ctx.tx.surveyImport.updateManyAndReturn({
    where: { id, state: { in: ['queued', 'running'] } },
    data: { state: 'running', updatedAt: ctx.clock() },
  });
  const [row] = taken;
  if (!row) return null;
  const { firmId, surveyId, madeById: personId, madeByName: name } = row;
  const member = await ctx.tx.firmMember.findFirst({ where: { firmId, personId }, select: { role: true } });
  if (!member) {
    throw notAllowed('Whoever began this no longer works for the firm. Choose the sheet again yourself.');
  }
  const role = member.role as FirmRole;
  const left = await ctx.tx.importPhoto.findMany({
    where: { importId: id, photoId: null, problem: null },
    select: { name: true },
  });
  const { timeZone } = await loadSurvey(ctx, surveyId);
  return {
    ...{ surveyId, timeZone, zipName: row.zipName ?? '', zipSha256: row.zipSha256 },
    left: row.zipSha256 ? left.map((photo) => photo.name) : [],
    actor: { kind: 'person', personId, name, email: '', memberships: [{ firmId, role }], firmIds: [firmId] },
  };
}

/**
 * Adds photos out of the ZIP to the survey and notes what became of each. One that the survey has already, also from an
 * attempt that was cut short, stays one photo.
 *
 * @param files each file's name in the ZIP, and what looking at it came to
 * @throws Refusal `not-allowed`, `wrong-state` when the survey was shut meanwhile
 */
export async function takeZippedPhotos(
  ctx: Ctx,
  {
    id,
    surveyId,
    files,
  }: { id: string; surveyId: string; files: readonly { name: string; upload: Upload }[] },
): Promise<void> {
  await lockSurvey(ctx, surveyId);
  const survey = await loadSurvey(ctx, surveyId);
  authorisePhotoWriting(ctx, survey);
  let added = 0;
  for (const { name, upload } of files) {
    const [file] = upload.accepted;
    const photo = file ? await addPhoto(ctx, { survey, file }) : null;
    if (photo?.fresh) added += 1;
    await ctx.tx.importPhoto.updateMany({
      where: { importId: id, name },
      data: photo
        ? { photoId: photo.id }
        : { problem: upload.refused[0]?.problem ?? 'The file can’t be read.' },
    });
  }
  if (added > 0) {
    await ctx.tx.survey.update({ where: { id: surveyId }, data: { photoCount: { increment: added } } });
  }
  await ctx.tx.surveyImport.updateMany({ where: { id }, data: { updatedAt: ctx.clock() } });
}

/** Notes that an import can't be ended, and why; it may be begun again. */
export async function failImport(ctx: Ctx, { id, problem }: { id: string; problem: string }): Promise<void> {
  await ctx.tx.surveyImport.updateMany({
    where: { id, state: { in: ['queued', 'running'] } },
    data: { state: 'failed', problem, updatedAt: ctx.clock() },
  });
}

/** Longer than any worker stays silent, in milliseconds. */
const lostAfterMs = 3 * 60_000;
const dayMs = 24 * 60 * 60_000;

/** Asks again for imports whose job seems lost, and forgets those looked at a day ago and done a month ago. */
export async function sweepImports(ctx: Pick<Ctx, 'tx' | 'clock'>): Promise<number> {
  const now = ctx.clock();
  const before = (ms: number) => ({ lt: new Date(now.getTime() - ms) });
  const lost = await ctx.tx.surveyImport.updateManyAndReturn({
    where: { state: { in: ['queued', 'running'] }, updatedAt: before(lostAfterMs) },
    data: { updatedAt: now },
    select: { id: true, firmId: true },
  });
  for (const { id, firmId } of lost) await enqueue(ctx.tx, 'survey.import', { firmId, importId: id });
  const old = {
    OR: [
      { state: { in: ['checked', 'failed'] }, updatedAt: before(dayMs) },
      { state: 'done', updatedAt: before(30 * dayMs) },
    ],
  };
  const zips = await ctx.tx.surveyImport.findMany({
    where: { ...old, zipSha256: { not: null } },
    select: { zipSha256: true },
  });
  const forgotten = await ctx.tx.surveyImport.deleteMany({ where: old });
  for (const { zipSha256 } of zips) {
    if (zipSha256) await enqueue(ctx.tx, 'object.collect', { sha256: zipSha256 });
  }
  return lost.length + forgotten.count;
}
