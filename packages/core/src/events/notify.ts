import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';

/** Has people told by mail what an event says, each once; whoever has lost sight of the survey by then isn't. */
export async function notify(
  ctx: Ctx,
  { firmId, eventId, personIds }: { firmId: string; eventId: string; personIds: readonly string[] },
): Promise<void> {
  for (const personId of new Set(personIds)) {
    await enqueue(ctx.tx, 'mail.notice', { firmId, eventId, personId });
  }
}

/** Everyone to whom what was issued of a survey is released. */
export async function releasedTo(ctx: Ctx, surveyId: string): Promise<string[]> {
  const parties = await ctx.tx.party.findMany({
    where: { surveyId, released: true },
    select: { personId: true },
  });
  return parties.map((p) => p.personId);
}
