import type { Extension } from '@garboard/contract/extensions';
import type { Prisma } from '@garboard/db/database';

/** A day as the database keeps it. */
export const fromDay = (day: string): Date => new Date(`${day}T00:00:00Z`);

/** A day of the database as JSON has it. */
export const dayOf = (date: Date | null): string | null => date?.toISOString().slice(0, 10) ?? null;

/** A day as people write it: 4 May 2026. */
export const writtenDay = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(fromDay(day));

export function presentExtension(row: Prisma.DueExtensionGetPayload<object>): Extension {
  return {
    id: row.id,
    findingId: row.findingId,
    from: dayOf(row.fromOn),
    dueOn: row.dueOn.toISOString().slice(0, 10),
    reason: row.reason,
    by: { name: row.byName, role: row.byRole },
    at: row.at.toISOString(),
  };
}
