import type { webhookMessage } from '@garboard/contract/webhooks';
import type { Role } from '@garboard/trade/permissions';
import { isWebhookKind, webhookKinds } from '@garboard/trade/webhook-kinds';
import type { z } from 'zod';
import type { PersonActor, SystemActor } from '../access/actor.ts';
import { releasedSurveys, visibleFindings, visibleSurveys } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';

/** Who is told by an endpoint: the firm, or its person in the one role it was made for. */
export function receiverOf(
  firmId: string,
  endpoint: { personId: string | null; role: string },
): PersonActor | SystemActor {
  const { personId, role } = endpoint;
  if (!personId) return { kind: 'system', firmIds: [firmId] };
  return {
    ...{ kind: 'person', personId, name: '', email: '', memberships: [], firmIds: [firmId] },
    key: { id: personId, firmId, role: role as Role, access: 'read' },
  };
}

/** The event as its receiver may see it now: ids only. Null when it is no longer for them. The sight must be theirs. */
export async function messageFor(
  ctx: Pick<Ctx, 'tx' | 'actor'>,
  event: {
    id: string;
    firmId: string;
    surveyId: string | null;
    findingId: string | null;
    reportId: string | null;
    kind: string;
    at: Date;
  },
): Promise<z.input<typeof webhookMessage> | null> {
  const { tx, actor } = ctx;
  const { firmId, surveyId, findingId, reportId, kind } = event;
  if (!surveyId || !isWebhookKind(kind)) return null;
  const issued = webhookKinds[kind] === 'issued';
  const surveys = issued ? releasedSurveys(actor) : visibleSurveys(actor);
  const survey = await tx.survey.findFirst({
    where: { AND: [{ id: surveyId }, surveys] },
    select: { id: true },
  });
  if (!survey) return null;
  // To a yard there are the findings it puts right and no documents.
  const yard = actor.kind === 'person' && actor.key?.role === 'yard';
  if (yard && issued && !findingId) return null;
  if (findingId) {
    const finding = await tx.finding.findFirst({
      where: { AND: [{ id: findingId }, visibleFindings(actor)] },
      select: { id: true },
    });
    if (!finding) return null;
  }
  const data = { firmId, eventId: event.id, surveyId, findingId, reportId: yard ? null : reportId };
  return { type: kind, timestamp: event.at.toISOString(), data };
}
