import type { JobData } from '@garboard/contract/jobs';
import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import type { EventKind } from '@garboard/trade/event-words';
import { fansOut } from '@garboard/trade/notice-kinds';
import { isWebhookKind } from '@garboard/trade/webhook-kinds';
import { actorId, actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { enqueueAll } from '../outbox/enqueue.ts';

export interface NewEvent {
  firmId: string;
  /** Left out for what concerns the firm as a whole. */
  surveyId?: string;
  findingId?: string;
  reportId?: string;
  kind: EventKind;
  /** The role in which the actor did it. */
  role: string;
  data?: Prisma.InputJsonObject;
  /** On whose behalf Garboard did it; left out when it is the one who acts. */
  behalf?: { id: string | null; name: string };
  /** Who is to be told besides those whom the kind concerns: `named` in trade/notice-kinds. */
  tell?: readonly string[];
}

/** Writes what was done into the firm’s record, in the transaction that does it. Answers the event’s id. */
export async function recordEvent(ctx: Ctx, event: NewEvent): Promise<string> {
  const [id] = await recordEvents(ctx, [event]);
  return id as string;
}

/** The same for several at once, in this order and at one time. */
export async function recordEvents(ctx: Ctx, events: readonly NewEvent[]): Promise<string[]> {
  const at = ctx.clock();
  const rows = events.map((event) => ({
    id: newId(),
    firmId: event.firmId,
    surveyId: event.surveyId ?? null,
    findingId: event.findingId ?? null,
    reportId: event.reportId ?? null,
    kind: event.kind,
    at,
    actorId: event.behalf ? event.behalf.id : actorId(ctx.actor),
    actorName: event.behalf ? event.behalf.name : actorName(ctx.actor),
    actorRole: event.role,
    data: event.data ?? {},
  }));
  await ctx.tx.event.createMany({ data: rows });
  await enqueueAll(ctx.tx, 'event.fan-out', events.flatMap(fanOutOf(rows)));
  return rows.map((row) => row.id);
}

const fanOutOf =
  (rows: readonly { id: string }[]) =>
  ({ kind, firmId, tell }: NewEvent, place: number): JobData<'event.fan-out'>[] => {
    const eventId = rows[place]?.id;
    return eventId && (fansOut(kind) || isWebhookKind(kind))
      ? [{ firmId, eventId, personIds: tell && [...new Set(tell)] }]
      : [];
  };
