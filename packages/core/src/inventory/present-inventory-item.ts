import type { InventoryItem } from '@garboard/contract/inventory';
import type { Prisma } from '@garboard/db/database';
import { dayIn } from '@garboard/trade/due-dates';
import { hasExpired } from '@garboard/trade/inventory';
import { surveyIsEditable } from '@garboard/trade/states';
import type { SurveyState, System } from '@garboard/trade/vocabulary';
import { may, type Standing } from '../access/policy.ts';
import type { Ctx } from '../context.ts';

type Row = Prisma.InventoryItemGetPayload<object>;

/** A date column as a calendar day. */
export const dayOf = (date: Date | null): string | null => date?.toISOString().slice(0, 10) ?? null;

/** A calendar day for a date column. */
export const dateOf = (day: string | null): Date | null =>
  day === null ? null : new Date(`${day}T00:00:00Z`);

/** A piece of equipment as the firm's staff see it. */
export function presentInventoryItem(
  ctx: Ctx,
  row: Row,
  survey: Standing & { state: string; timeZone: string },
): InventoryItem {
  const expiresOn = dayOf(row.expiresOn);
  return {
    id: row.id,
    surveyId: row.surveyId,
    system: row.system as System,
    name: row.name,
    maker: row.maker,
    serialNumber: row.serialNumber,
    place: row.place,
    count: row.count,
    madeOn: dayOf(row.madeOn),
    expiresOn,
    expired: hasExpired(expiresOn, dayIn(survey.timeZone, ctx.clock())),
    note: row.note,
    may: {
      edit: may(ctx.actor, survey, 'inventory.write') && surveyIsEditable(survey.state as SurveyState),
    },
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    version: row.version,
  };
}
