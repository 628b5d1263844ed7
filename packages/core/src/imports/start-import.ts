import type { SurveyImportRecord } from '@garboard/contract/imports';
import type { Ctx } from '../context.ts';
import { writableSurvey } from '../findings/writable-survey.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { Refusal } from '../problems.ts';
import { type Choices, lockImport, requireOpen } from './load-import.ts';
import { planImport } from './plan-import.ts';
import { presentImport } from './present-import.ts';

/**
 * Has a sheet brought in by the worker. Begun already, it answers how far that is.
 *
 * @throws Refusal `not-found`, `not-allowed`, `wrong-state`; `invalid-input` naming each bad row, unless they are to be
 *   left out
 */
export async function startImport(
  ctx: Ctx,
  { id, choices }: { id: string; choices: Choices },
): Promise<SurveyImportRecord> {
  const { row, survey } = await lockImport(ctx, id);
  if (row.state === 'queued' || row.state === 'running') return presentImport(ctx, row, survey);
  requireOpen(row);
  await writableSurvey(ctx, survey.id);
  const chosen = { ...row, choices: { ...choices } };
  const { rows } = await planImport(ctx, chosen, survey);
  const bad = rows.filter(({ finding, there }) => !finding && !there);
  if (bad.length > 0 && !choices.leaveOutBadRows) {
    const errors = bad.flatMap(({ line, problems }) =>
      problems.map(({ column, detail }) => ({
        pointer: column ? `line ${line}, ${column}` : `line ${line}`,
        detail,
      })),
    );
    const detail =
      `${bad.length === 1 ? '1 row' : `${bad.length} rows`} can’t become findings as they are. Put them right in the ` +
      'sheet and choose it again, or say that they are to be left out.';
    throw new Refusal('invalid-input', detail, errors.slice(0, 200));
  }
  const queued = await ctx.tx.surveyImport.update({
    where: { id },
    data: { state: 'queued', choices: { ...choices }, problem: null, updatedAt: ctx.clock() },
  });
  await enqueue(ctx.tx, 'survey.import', { firmId: row.firmId, importId: id });
  return presentImport(ctx, queued, survey);
}
