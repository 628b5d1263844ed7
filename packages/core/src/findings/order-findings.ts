import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, wrongState } from '../problems.ts';
import { writableSurvey } from './writable-survey.ts';

/**
 * Sets the order of the report. Every finding must be named once; those already issued keep their numbers, by
 * which people speak of them.
 */
export async function orderFindings(
  ctx: Ctx,
  input: { surveyId: string; ids: readonly string[] },
): Promise<void> {
  const { survey, role } = await writableSurvey(ctx, input.surveyId);
  const rows = await ctx.tx.finding.findMany({
    where: { surveyId: survey.id },
    select: { id: true, number: true, state: true },
  });
  const given = new Set(input.ids);
  if (given.size !== input.ids.length || given.size !== rows.length || rows.some((r) => !given.has(r.id))) {
    throw invalidField(
      '/ids',
      'Name every finding of the survey exactly once. Load the list again if it changed.',
    );
  }
  const numberOf = new Map(input.ids.map((id, index) => [id, index + 1]));
  if (rows.some((r) => r.state !== 'draft' && numberOf.get(r.id) !== r.number)) {
    throw wrongState('Issued findings keep their numbers; move only the new ones, after them.');
  }
  await ctx.tx.$executeRaw`
    UPDATE findings SET number = wanted.number
      FROM unnest(${[...input.ids]}::uuid[]) WITH ORDINALITY AS wanted (id, number)
     WHERE findings.id = wanted.id AND findings.number <> wanted.number`;
  await recordEvent(ctx, { firmId: survey.firmId, surveyId: survey.id, kind: 'findings.ordered', role });
}
