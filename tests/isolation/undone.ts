import type { Database, Tx } from '@garboard/db/database';

/** Thrown to have a transaction rolled back although its work was done. */
class Undo extends Error {}

/**
 * A database whose transactions do all that they do, constraints and triggers of their end among it, and are then
 * rolled back, while `undoing()` says so. Thousands of requests, deletions too, find the same world.
 */
export function undone(db: Database, undoing: () => boolean): Database {
  const transaction: Database['prisma']['$transaction'] = db.prisma.$transaction.bind(db.prisma);
  const run = async <T>(work: (tx: Tx) => Promise<T>): Promise<T> => {
    if (!undoing()) return transaction(work);
    let result: { value: T } | undefined;
    try {
      await transaction(async (tx: Tx) => {
        result = { value: await work(tx) };
        await tx.$executeRaw`SET CONSTRAINTS ALL IMMEDIATE`;
        throw new Undo();
      });
    } catch (error) {
      if (!(error instanceof Undo) || !result) throw error;
    }
    if (!result) throw new Error('Nothing was done.');
    return result.value;
  };
  const prisma = new Proxy(db.prisma, {
    get: (target, key) => (key === '$transaction' ? run : Reflect.get(target, key)),
  });
  return { prisma, reads: db.reads, close: () => db.close() };
}
