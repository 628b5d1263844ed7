import type { Worksheet, worksheetCreate } from '@garboard/contract/worksheets';
import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { findWorksheet } from '@garboard/trade/worksheets/registry';
import type { z } from 'zod';
import { idTaken, unlessTaken } from '../client-ids.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { invalidField } from '../problems.ts';
import { getWorksheet } from './get-worksheet.ts';
import { refuseForeignFinding } from './refuse-foreign-finding.ts';
import { workInputs } from './work-inputs.ts';

/**
 * Works a worksheet and keeps it with a survey, by itself or with a finding. With an id made by the client, sent
 * again, it answers the worksheet already kept.
 */
export async function createWorksheet(
  ctx: Ctx,
  input: { surveyId: string; worksheet: z.output<typeof worksheetCreate> },
): Promise<Worksheet> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId, 'worksheet.write');
  const { id = newId(), kind, inputs, findingId, printed } = input.worksheet;
  if (input.worksheet.id) {
    const kept = await ctx.tx.worksheet.findUnique({ where: { id }, select: { surveyId: true } });
    if (kept && kept.surveyId !== survey.id) throw idTaken('worksheet');
    if (kept) return getWorksheet(ctx, id);
  }
  const computation = findWorksheet(kind);
  if (!computation) {
    throw invalidField(
      '/kind',
      `There is no worksheet of kind “${kind}”; GET /v1/worksheet-kinds lists them.`,
    );
  }
  await refuseForeignFinding(ctx, { findingId, surveyId: survey.id });
  const result = workInputs(computation, inputs);
  const title = input.worksheet.title ?? computation.title;
  const now = ctx.clock();
  const at = { firmId: survey.firmId, surveyId: survey.id };
  const create = ctx.tx.worksheet.create({
    data: {
      id,
      ...at,
      findingId,
      kind,
      kindVersion: result.version,
      title,
      inputs: inputs as Prisma.InputJsonObject,
      result: result as unknown as Prisma.InputJsonObject,
      verdict: result.verdict,
      printed,
      createdAt: now,
      updatedAt: now,
    },
  });
  await unlessTaken(create, 'worksheet');
  const of = findingId ? { findingId } : {};
  await recordEvent(ctx, { ...at, ...of, kind: 'worksheet.created', role, data: { title } });
  return getWorksheet(ctx, id);
}
