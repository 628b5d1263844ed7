import { type ReportKind, reportKindLabels } from '@garboard/trade/vocabulary';
import { isStaff, rolesOn, type Standing } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';

interface Viewed {
  id: string;
  firmId: string;
  surveyId: string;
  kind: string;
  revision: number | null;
  survey: Standing;
}

/**
 * Writes down that a party opened an issued document: once a day and person and document, which is what somebody asks
 * who wants to know whether it was read. The firm's own looks aren't written down.
 */
export async function recordView(ctx: Ctx, report: Viewed): Promise<void> {
  const { actor, tx } = ctx;
  if (actor.kind !== 'person' || isStaff(actor, report.survey)) return;
  const now = ctx.clock();
  const today = new Date(now);
  today.setUTCHours(0, 0, 0, 0);
  const where = {
    ...{ surveyId: report.surveyId, kind: 'report.viewed', reportId: report.id, actorId: actor.personId },
    at: { gte: today },
  };
  const seen = () => tx.event.findFirst({ where, select: { id: true } });
  if (await seen()) return;
  // A page asks for the data and the file at once: the second waits here and then finds the first's.
  await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`view ${actor.personId} ${report.id}`}, 0))::text`;
  if (await seen()) return;
  const { firmId, surveyId, id: reportId } = report;
  const label = reportKindLabels[report.kind as ReportKind];
  await recordEvent(ctx, {
    ...{
      firmId,
      surveyId,
      reportId,
      kind: 'report.viewed',
      role: rolesOn(actor, report.survey)[0] ?? 'party',
    },
    data: { label, revision: String(report.revision ?? '') },
  });
}
