import type { Worksheet, worksheetPatch } from '@garboard/contract/worksheets';
import type { Prisma } from '@garboard/db/database';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { staleVersion, wrongState } from '../problems.ts';
import { getWorksheet } from './get-worksheet.ts';
import { loadWorksheet } from './load-worksheet.ts';
import { refuseForeignFinding } from './refuse-foreign-finding.ts';
import { workInputs } from './work-inputs.ts';

export interface UpdateWorksheet {
  id: string;
  patch: z.output<typeof worksheetPatch>;
  ifMatch?: number | undefined;
}

/** New inputs worked with the current version of the computation; nothing when none were given. */
function worked(kind: string, inputs: Record<string, unknown> | undefined) {
  if (!inputs) return {};
  const computation = findWorksheet(kind);
  if (!computation) {
    throw wrongState('This kind of worksheet is no longer offered. Its result stays as it is on record.');
  }
  const result = workInputs(computation, inputs);
  return {
    inputs: inputs as Prisma.InputJsonObject,
    result: result as unknown as Prisma.InputJsonObject,
    kindVersion: result.version,
    verdict: result.verdict,
  };
}

/**
 * Edits the working copy of a worksheet. Without new inputs its result stays as it was kept; what was issued stays
 * as it was until the next revision.
 *
 * @throws Refusal `stale-version` when `ifMatch` isn't the version on file; `invalid-input` for inputs refused
 */
export async function updateWorksheet(ctx: Ctx, { id, patch, ifMatch }: UpdateWorksheet): Promise<Worksheet> {
  const worksheet = await loadWorksheet(ctx, id);
  const { firmId, surveyId } = worksheet;
  const { role } = await writableSurvey(ctx, surveyId, 'worksheet.write');
  const { inputs, ...fields } = patch;
  await refuseForeignFinding(ctx, { findingId: fields.findingId, surveyId });
  const changed = await ctx.tx.worksheet.updateMany({
    where: { id, ...(ifMatch === undefined ? {} : { version: ifMatch }) },
    data: { ...fields, ...worked(worksheet.kind, inputs), version: { increment: 1 } },
  });
  if (changed.count === 0) throw staleVersion('worksheet');
  const findingId = fields.findingId === undefined ? worksheet.findingId : fields.findingId;
  await recordEvent(ctx, {
    firmId,
    surveyId,
    ...(findingId ? { findingId } : {}),
    kind: 'worksheet.updated',
    role,
    data: { title: fields.title ?? worksheet.title },
  });
  return getWorksheet(ctx, id);
}
