import type { Report } from '@garboard/contract/reports';
import { isStaff, may } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { notFound } from '../problems.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { reportFacts } from './load-report.ts';
import { latestIssued, presentReport } from './present-report.ts';

export interface ListReports extends PageInput {
  surveyId: string;
  /** Drafts to look at instead of documents. */
  preview?: boolean;
}

/** A survey's reports, newest first; parties see those that were issued. @throws Refusal `not-found` */
export async function listReports(ctx: Ctx, input: ListReports): Promise<Page<Report>> {
  const before = decodeCursor(input.cursor, uuidForm);
  const survey = await loadSurvey(ctx, input.surveyId);
  const staff = isStaff(ctx.actor, survey);
  if (!staff && !may(ctx.actor, survey, 'report.read')) throw notFound('report');
  const rows = await ctx.tx.report.findMany({
    where: {
      surveyId: survey.id,
      preview: input.preview ?? false,
      findingId: null,
      ...(staff ? {} : { state: 'issued' }),
      ...(before ? { id: { lt: before } } : {}),
    },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
    select: reportFacts,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  const latest = await latestIssued(ctx, survey.id);
  return { items: page.items.map((row) => presentReport(row, latest)), next: page.next };
}
