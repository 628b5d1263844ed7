import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { EventKind } from '@garboard/trade/event-words';
import { actorId, actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';

export interface NewEvent {
  firmId: string;
  surveyId: string;
  findingId?: string;
  reportId?: string;
  kind: EventKind;
  /** The role in which the actor did it. */
  role: string;
  data?: Prisma.InputJsonObject;
}

/** Writes what was done into the survey's history, in the transaction that does it. Answers the event's id. */
export async function recordEvent(ctx: Ctx, event: NewEvent): Promise<string> {
  const id = newId();
  await ctx.tx.event.create({
    data: {
      id,
      firmId: event.firmId,
      surveyId: event.surveyId,
      findingId: event.findingId ?? null,
      reportId: event.reportId ?? null,
      kind: event.kind,
      at: ctx.clock(),
      actorId: actorId(ctx.actor),
      actorName: actorName(ctx.actor),
      actorRole: event.role,
      data: event.data ?? {},
    },
  });
  return id;
}
