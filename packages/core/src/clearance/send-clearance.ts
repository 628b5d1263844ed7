import type { Clearance, clearanceFields } from '@garboard/contract/clearances';
import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { Role } from '@garboard/trade/permissions';
import { awaitsEvidence } from '@garboard/trade/states';
import type { FindingState } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { keepObject } from '../files/keep-object.ts';
import type { AcceptedFile, Upload } from '../files/received-file.ts';
import { refuseUpload } from '../files/refuse-upload.ts';
import { type LoadedFinding, loadFinding } from '../findings/load-finding.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { invalidField, wrongState } from '../problems.ts';
import { answersOf, coveredItems, measurementOf } from './evidence-parts.ts';
import { standingsOf } from './items.ts';
import { lockFinding } from './lock-finding.ts';
import { presentClearance, withFiles } from './present-clearance.ts';
import { refuseOutdated } from './refuse-outdated.ts';

export interface SendClearance {
  findingId: string;
  fields: z.output<typeof clearanceFields>;
  upload: Upload;
}

/** Why no evidence can be sent in a state, and what to do instead. */
const notAwaited: Record<Exclude<FindingState, 'open' | 'returned'>, string> = {
  draft: 'This finding has not been issued yet; evidence can be sent once the report is out.',
  'evidence-sent':
    'Evidence for this finding is already waiting for a decision. Wait for it before sending more.',
  cleared: 'This finding is cleared already; nothing more needs to be sent.',
  'accepted-as-is': 'This finding was accepted as it is; nothing more needs to be sent.',
  withdrawn: 'This finding was withdrawn; nothing more needs to be sent.',
};

function refuseUnlessAwaited(finding: { state: string; clearing: boolean }): void {
  const state = finding.state as FindingState;
  if (state !== 'open' && state !== 'returned') throw wrongState(notAwaited[state]);
  if (!finding.clearing) {
    throw wrongState(
      'This finding is for information and need not be cleared, so no evidence is taken for it.',
    );
  }
}

async function loadForSending(ctx: Ctx, findingId: string): Promise<{ finding: LoadedFinding; role: Role }> {
  const finding = await loadFinding(ctx, findingId);
  const detail = 'Evidence is sent by the owner or a yard that the owner invited.';
  const role = authorise(ctx.actor, finding.survey, 'evidence.send', detail);
  refuseUnlessAwaited(finding);
  return { finding, role };
}

/** Whether evidence may be sent, asked before its files are read. @returns the zone of their capture times */
export async function maySendClearance(ctx: Ctx, findingId: string): Promise<{ timeZone: string }> {
  const { finding } = await loadForSending(ctx, findingId);
  return { timeZone: finding.survey.timeZone };
}

/**
 * Sends evidence that a finding was put right: a statement, with photos and documents or without. One bad file
 * refuses the whole, because what was sent is what will be decided on.
 *
 * @throws Refusal `not-found`, `not-allowed`, `invalid-input`, `files-refused`, `too-large`; `wrong-state`, also when the
 *   finding was issued with other words since it was read
 */
export async function sendClearance(
  ctx: Ctx,
  { findingId, fields, upload }: SendClearance,
): Promise<Clearance> {
  await lockFinding(ctx, findingId);
  const { finding, role } = await loadForSending(ctx, findingId);
  const workDoneOn = new Date(`${fields.workDoneOn}T00:00:00Z`);
  // East of here it may be tomorrow already.
  if (workDoneOn.getTime() > ctx.clock().getTime() + 24 * 3_600_000) {
    throw invalidField('/workDoneOn', 'The work can’t have been done on a day that is still to come.');
  }
  await refuseOutdated(ctx, finding, fields.revision);
  const covered = coveredItems(finding, fields.itemIds);
  const measured = await measurementOf(ctx, finding, fields);
  if (upload.refused.length > 0) throw refuseUpload(upload.refused);
  const answers = answersOf(finding, fields.pairs, upload.accepted);

  const waiting = Object.fromEntries(covered.map(({ itemId }) => [itemId, { state: 'evidence-sent' }]));
  const sent = await ctx.tx.finding.updateMany({
    where: {
      ...{ id: finding.id, state: { in: [...awaitsEvidence] }, clearing: true },
      issuedRevision: finding.issuedRevision,
    },
    data: {
      state: 'evidence-sent',
      itemStates: { ...standingsOf(finding), ...waiting } as Prisma.InputJsonObject,
    },
  });
  if (sent.count === 0) {
    const now = await ctx.tx.finding.findUniqueOrThrow({ where: { id: finding.id } });
    refuseUnlessAwaited(now);
    throw wrongState('The report was issued again just now. Read the finding again, then send the evidence.');
  }

  const id = newId();
  const { firmId, surveyId } = finding;
  await ctx.tx.clearance.create({
    data: {
      id,
      firmId,
      surveyId,
      findingId: finding.id,
      statement: fields.statement,
      workDoneBy: fields.workDoneBy,
      workDoneOn,
      items: covered as unknown as Prisma.InputJsonArray,
      revision: finding.issuedRevision,
      ...(measured ? { worksheet: measured.result as unknown as Prisma.InputJsonObject } : {}),
      ...(measured?.inputs ? { worksheetInputs: measured.inputs as Prisma.InputJsonObject } : {}),
      sentById: actorId(ctx.actor),
      sentByName: actorName(ctx.actor),
      sentByRole: role,
      sentAt: ctx.clock(),
    },
  });
  for (const [ordinal, file] of upload.accepted.entries()) {
    const beforePhotoId = answers.get(ordinal) ?? null;
    await addFile(ctx, { firmId, clearanceId: id, ordinal, file, beforePhotoId });
  }
  const data = { statement: shortened(fields.statement) };
  await recordEvent(ctx, { firmId, surveyId, findingId: finding.id, kind: 'evidence.sent', role, data });
  const row = await ctx.tx.clearance.findUniqueOrThrow({ where: { id }, include: withFiles });
  return presentClearance(ctx, row, finding);
}

interface NewFile {
  firmId: string;
  clearanceId: string;
  ordinal: number;
  file: AcceptedFile;
  beforePhotoId: string | null;
}

async function addFile(
  ctx: Ctx,
  { firmId, clearanceId, ordinal, file, beforePhotoId }: NewFile,
): Promise<void> {
  const id = newId();
  const { sha256, bytes } = file.staged;
  const { mediaType, name: fileName } = file;
  const size = { width: file.size?.width ?? null, height: file.size?.height ?? null };
  await ctx.tx.clearanceFile.create({
    data: { id, firmId, clearanceId, ordinal, sha256, bytes, mediaType, fileName, ...size, beforePhotoId },
  });
  await keepObject(ctx.tx, file.staged);
  if (file.size) await enqueue(ctx.tx, 'clearance-file.derive', { firmId, fileId: id });
}

/** The beginning of a statement, for the one line that the history shows. */
function shortened(statement: string): string {
  const line = [...statement.replace(/\s+/g, ' ')];
  return line.length <= 160 ? line.join('') : `${line.slice(0, 159).join('')}…`;
}
