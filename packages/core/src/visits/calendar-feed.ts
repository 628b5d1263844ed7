import type { calendarFeed } from '@garboard/contract/visits';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { atTheKeyboard } from '../people/prove-presence.ts';
import { hashToken, newToken } from '../people/tokens.ts';

export type CalendarFeedView = z.output<typeof calendarFeed>;

/** Whether the person has a calendar address; the address itself is kept nowhere. @throws Refusal `not-allowed` */
export async function getCalendarFeed(ctx: Ctx): Promise<CalendarFeedView> {
  const { personId } = atTheKeyboard(ctx);
  const row = await ctx.tx.calendarFeed.findUnique({ where: { personId } });
  return {
    address: null,
    createdAt: row?.createdAt.toISOString() ?? null,
    lastReadAt: row?.lastReadAt?.toISOString() ?? null,
  };
}

/** Makes a secret address for the person's visits; one made before stops working. @throws Refusal `not-allowed` */
export async function makeCalendarFeed(
  ctx: Ctx,
  { publicUrl }: { publicUrl: string },
): Promise<CalendarFeedView> {
  const { personId } = atTheKeyboard(ctx);
  const token = newToken();
  const made = { tokenHash: hashToken(token), createdAt: ctx.clock(), lastReadAt: null };
  await ctx.tx.calendarFeed.upsert({ where: { personId }, create: { personId, ...made }, update: made });
  const address = new URL(`/v1/calendars/${token}/visits.ics`, publicUrl).href;
  return { address, createdAt: made.createdAt.toISOString(), lastReadAt: null };
}

/** Stops the person's calendar address. @throws Refusal `not-allowed` */
export async function revokeCalendarFeed(ctx: Ctx): Promise<void> {
  const { personId } = atTheKeyboard(ctx);
  await ctx.tx.calendarFeed.deleteMany({ where: { personId } });
}
