import type { Database } from '@garboard/db/database';
import { emptyAllTables } from '@garboard/db/empty';

/** Stands in the table of one-time links while the demonstration is being loaded; nobody can use it. */
export const underWay = 'demonstration-under-way';

/** Empties the database when the last load was cut short; nobody could sign in yet, so nothing of theirs is lost. */
export async function clearInterruptedLoad(ownerUrl: string, db: Database): Promise<void> {
  const mark = await db.prisma.oneTimeLink.findFirst({ where: { kind: underWay } });
  if (mark) await emptyAllTables(ownerUrl);
}
