import { type Database, type Tx, widen } from './database.ts';

/** The longest that a copy of a whole firm or installation may take. */
const copyMs = 12 * 60 * 60_000;

/** Runs reads of these firms in one snapshot of the database, which may take hours: all see what was there at its start. */
export async function inSnapshot<T>(
  db: Database,
  firmIds: readonly string[],
  work: (tx: Tx) => Promise<T>,
): Promise<T> {
  return db.prisma.$transaction(
    async (tx) => {
      await widen(tx, firmIds);
      return work(tx);
    },
    { isolationLevel: 'RepeatableRead', timeout: copyMs },
  );
}

/** Runs an operator's work with the rights of the database's owner, whom no policy binds; it may take hours. */
export async function asOwner<T>(db: Database, work: (tx: Tx) => Promise<T>): Promise<T> {
  return db.prisma.$transaction(
    async (tx) => {
      await tx.$executeRaw`SET LOCAL ROLE NONE`;
      return work(tx);
    },
    { timeout: copyMs },
  );
}
