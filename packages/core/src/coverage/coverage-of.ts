import type { CoverageItem } from '@garboard/contract/coverage';
import type { Prisma } from '@garboard/db/database';
import { type Reached, systemsAsked } from '@garboard/trade/coverage';
import { type Purpose, type System, systems } from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';

type Row = Prisma.CoverageAnswerGetPayload<object>;

const itemOf = (system: System, row: Row | undefined, asked: boolean): CoverageItem => ({
  system,
  asked,
  reached: (row?.reached ?? null) as Reached | null,
  reason: row?.reason ?? '',
  lookedFrom: row?.lookedFrom ?? '',
  updatedAt: row?.updatedAt.toISOString() ?? null,
  version: row?.version ?? 0,
});

/** Every system with its answer, in the usual order; the survey's findings add to what its purpose asks for. */
export async function coverageOf(ctx: Ctx, survey: { id: string; purpose: string }): Promise<CoverageItem[]> {
  const rows = await ctx.tx.coverageAnswer.findMany({ where: { surveyId: survey.id } });
  const found = await ctx.tx.finding.findMany({
    where: { surveyId: survey.id, state: { not: 'withdrawn' } },
    distinct: ['system'],
    select: { system: true },
  });
  const asked = new Set(
    systemsAsked(
      survey.purpose as Purpose,
      found.map((f) => f.system as System),
    ),
  );
  const bySystem = new Map(rows.map((row) => [row.system, row]));
  return systems.map((system) => itemOf(system, bySystem.get(system), asked.has(system)));
}

/** The systems that still have to be answered for. */
export const unansweredOf = (items: readonly CoverageItem[]): System[] =>
  items.filter((item) => item.asked && item.reached === null).map((item) => item.system);
