import type { importStart } from '@garboard/contract/imports';
import type { Prisma } from '@garboard/db/database';
import type { z } from 'zod';
import { authorise, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { notFound, wrongState } from '../problems.ts';
import { type LoadedSurvey, loadSurvey } from '../surveys/load-survey.ts';
import type { Sheet } from './read-sheet.ts';
import type { Remark } from './row-cells.ts';

export type ImportRow = Prisma.SurveyImportGetPayload<object>;
export type Choices = z.output<typeof importStart>;

/** What became of a row. */
export interface RowOutcome {
  line: number;
  /** The finding that it is now, made by this import or before; null for one left out. */
  findingId: string | null;
  made: boolean;
  problems: Remark[];
}

export const sheetOf = (row: ImportRow): Sheet => row.sheet as unknown as Sheet;
export const outcomeOf = (row: ImportRow): RowOutcome[] => (row.outcome ?? []) as unknown as RowOutcome[];
export const choicesOf = (row: ImportRow): Choices => ({
  leaveOutBadRows: false,
  otherColumns: 'append',
  ...(row.choices as Partial<Choices>),
});

/** An import into a survey whose findings the actor may write. @throws Refusal `not-found` */
export async function loadImport(ctx: Ctx, id: string): Promise<{ row: ImportRow; survey: LoadedSurvey }> {
  const row = await ctx.tx.surveyImport.findUnique({ where: { id } });
  if (!row) throw notFound('sheet to bring in');
  const survey = await loadSurvey(ctx, row.surveyId);
  if (!may(ctx.actor, survey, 'finding.import')) throw notFound('sheet to bring in');
  return { row, survey };
}

/** The same, held until the transaction ends. */
export async function lockImport(ctx: Ctx, id: string) {
  await ctx.tx.$queryRaw`SELECT id FROM survey_imports WHERE id = ${id}::uuid FOR UPDATE`;
  return loadImport(ctx, id);
}

/** @throws Refusal `not-allowed`, `wrong-state` for a survey that is shut */
export function authoriseImport(ctx: Ctx, survey: LoadedSurvey) {
  return authorise(
    ctx.actor,
    survey,
    'finding.import',
    'Only the firm’s surveyors may bring findings into a survey.',
  );
}

/** States in which what is to be brought in can still be changed. */
export const isOpen = ({ state }: { state: string }) => state === 'checked' || state === 'failed';

/** @throws Refusal `wrong-state` */
export function requireOpen(row: ImportRow): void {
  if (isOpen(row)) return;
  throw wrongState(
    row.state === 'done'
      ? 'This sheet was brought in already. Choose it again to see what is new in it.'
      : 'This sheet is being brought in just now. Wait until that is done.',
  );
}
