import type { surveyEvent } from '@garboard/contract/surveys';
import { eventSummary } from '@garboard/trade/event-words';
import type { z } from 'zod';
import { authorise, isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { loadFinding } from '../findings/load-finding.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';

export type EventView = z.output<typeof surveyEvent>;

/** What parties see of a finding's history: what was issued and what came of it, not the drafting before. */
const sharedKinds = [
  'finding.issued',
  'finding.withdrawn',
  'evidence.sent',
  'evidence.accepted',
  'evidence.returned',
  'evidence.accepted-as-is',
  'evidence.part-accepted',
  'finding.extended',
  'finding.limit-ended',
  'finding.re-inspected',
];

/** Events that these conditions and row-level security leave, newest first. */
export async function listWhere(
  ctx: Ctx,
  where: ({ surveyId: string } | { findingId: string }) & { kind?: { in: string[] } },
  input: PageInput,
): Promise<Page<EventView>> {
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.event.findMany({
    where: { ...where, ...(before ? { id: { lt: before } } : {}) },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  const items = page.items.map((row) => ({
    id: row.id,
    at: row.at.toISOString(),
    kind: row.kind,
    summary: eventSummary(row.kind, row.data as Record<string, unknown>),
    actor: { name: row.actorName, role: row.actorRole },
    findingId: row.findingId,
    reportId: row.reportId,
  }));
  return { items, next: page.next };
}

/** A survey's whole history, newest first; for the firm. @throws Refusal `not-allowed` */
export async function listEvents(
  ctx: Ctx,
  input: PageInput & { surveyId: string },
): Promise<Page<EventView>> {
  const survey = await loadSurvey(ctx, input.surveyId);
  authorise(
    ctx.actor,
    survey,
    'survey.events.read',
    'The survey’s history is for the firm; a finding’s own is open to you.',
  );
  return listWhere(ctx, { surveyId: survey.id }, input);
}

/** A finding's history, newest first. */
export async function listFindingEvents(
  ctx: Ctx,
  input: PageInput & { findingId: string },
): Promise<Page<EventView>> {
  const finding = await loadFinding(ctx, input.findingId);
  const staff = isStaff(ctx.actor, finding.survey);
  return listWhere(ctx, { findingId: finding.id, ...(staff ? {} : { kind: { in: sharedKinds } }) }, input);
}
