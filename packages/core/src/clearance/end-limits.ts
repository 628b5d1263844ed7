import type { Prisma } from '@garboard/db/database';
import type { ItemStandings } from '@garboard/trade/clearing';
import type { Ctx } from '../context.ts';
import { recordEvents } from '../events/record-event.ts';
import { fromDay } from './extension-rows.ts';
import { type Item, issuedItems, standingsOf } from './items.ts';
import { limitsOf } from './take-decision.ts';

/** How many findings one look opens again at most; the next goes on. */
const batchSize = 200;

interface Ended {
  id: string;
  firmId: string;
  surveyId: string;
  state: string;
  limit: string | null;
  /** The last day of the limit. */
  until: string;
  today: string;
  issued: { items?: Item[] } | null;
  items: unknown;
  itemStates: unknown;
}

/**
 * Opens findings again that were accepted as they are until a day which is past by the survey's calendar: with that day
 * as the one by which they were due. Of several items only those whose limit ended are open again, and where others are
 * still undecided nothing else changes. To be called for all firms.
 *
 * @returns how many were opened
 */
export async function endLimits(ctx: Ctx): Promise<number> {
  const now = ctx.clock();
  const ended = await ctx.tx.$queryRaw<Ended[]>`
    SELECT f.id, f.firm_id AS "firmId", f.survey_id AS "surveyId", f.state, f.accepted_limit AS limit,
           f.accepted_until::text AS until, (${now}::timestamptz AT TIME ZONE s.time_zone)::date::text AS today,
           f.issued, f.items, f.item_states AS "itemStates"
      FROM findings f JOIN surveys s ON s.id = f.survey_id
     WHERE f.state <> 'withdrawn' AND f.accepted_until < (${now}::timestamptz AT TIME ZONE s.time_zone)::date
       AND f.accepted_until <= ${now}::date + 1
     ORDER BY f.id LIMIT ${batchSize}
       FOR UPDATE OF f SKIP LOCKED`;
  for (const row of ended) {
    const standings = withoutEnded(row);
    const whole = row.state === 'accepted-as-is';
    const next = limitsOf(issuedItems(row), standings).until;
    await ctx.tx.finding.update({
      where: { id: row.id },
      data: {
        ...(whole ? { state: 'open', dueOn: fromDay(row.until), dueExtendedAt: now } : {}),
        itemStates: standings as unknown as Prisma.InputJsonObject,
        acceptedLimit: null,
        acceptedUntil: next && fromDay(next),
      },
    });
  }
  await recordEvents(
    ctx,
    ended.map((row) => ({
      ...{ firmId: row.firmId, surveyId: row.surveyId, findingId: row.id, role: 'system' },
      kind: 'finding.limit-ended' as const,
      data: { limit: row.limit ?? endedItems(row).join('; '), dueOn: row.until },
    })),
  );
  return ended.length;
}

/** The items whose limit is past, each with its limit. */
function endedItems(row: Ended): string[] {
  const before = standingsOf(row);
  const after = withoutEnded(row);
  return issuedItems(row).flatMap(({ id, text }) =>
    before[id] && !after[id] ? [`${text}: ${before[id].limit ?? ''}`] : [],
  );
}

/** How items stand once those whose limit is past are open again. */
function withoutEnded({ itemStates, today }: Ended): ItemStandings {
  return Object.fromEntries(
    Object.entries(standingsOf({ itemStates })).filter(
      ([, { limitUntil }]) => limitUntil == null || limitUntil >= today,
    ),
  );
}
