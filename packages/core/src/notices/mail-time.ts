import type { NoticeRule, NoticeWay } from '@garboard/trade/notice-kinds';
import { DateTime } from 'luxon';

/** How long an event waits for others that are to be told in the same message, in milliseconds. */
export const settleMs = 60_000;

/** The hour, of the person's own clock, at which the daily and the weekly digest may leave. */
const digestHour = 7;

/**
 * From when a notice may be mailed; null for never.
 * @param zone IANA name of the person's time zone.
 */
export function mailTime(
  now: Date,
  { way, zone, rule }: { way: NoticeWay; zone: string; rule: Pick<NoticeRule, 'urgent'> },
): Date | null {
  if (way === 'portal-only') return null;
  if (way === 'at-once') return rule.urgent ? now : new Date(now.getTime() + settleMs);
  const here = DateTime.fromJSDate(now, { zone });
  const today = here.startOf('day').set({ hour: digestHour });
  if (way === 'daily') return (here < today ? today : today.plus({ days: 1 })).toJSDate();
  // Told in rounds that begin on Mondays: by a person's own clock some begin on Sunday or before anybody is up.
  if (here.weekday === 7) return today.plus({ days: 1 }).toJSDate();
  return here.weekday === 1 ? DateTime.max(here, today).toJSDate() : now;
}
