import { PrismaPg } from '@prisma/adapter-pg';
import { Prisma, PrismaClient } from './generated/client.ts';

export { Prisma };

/** A transaction: every function that reads or writes the database takes one, and nothing else does. */
export type Tx = Prisma.TransactionClient;

export interface Database {
  readonly prisma: PrismaClient;
  close(): Promise<void>;
}

/** The role the application works under. It owns no table, so row-level security binds it. */
const applicationRole = 'garboard_app';

/**
 * Opens a pool of connections that work under the application's role.
 *
 * @param url address of the owner, who may become that role; @param connections most at once.
 */
export function openDatabase(url: string, connections = 12): Database {
  const adapter = new PrismaPg({
    connectionString: url,
    max: connections,
    options: `-c role=${applicationRole}`,
  });
  const prisma = new PrismaClient({ adapter, transactionOptions: { maxWait: 10_000, timeout: 30_000 } });
  return { prisma, close: () => prisma.$disconnect() };
}

/**
 * Runs work in one transaction that sees and may touch the rows of these firms only; everything is undone when it
 * throws.
 */
export async function inTransaction<T>(
  db: Database,
  firmIds: readonly string[],
  work: (tx: Tx) => Promise<T>,
): Promise<T> {
  return db.prisma.$transaction(async (tx) => {
    await tx.$executeRaw`SELECT set_config('app.firm_ids', ${firmIds.join(',')}, true)`;
    return work(tx);
  });
}

/** Widens the running transaction to further firms, as when a firm has just been founded in it. */
export async function widen(tx: Tx, firmIds: readonly string[]): Promise<void> {
  await tx.$executeRaw`SELECT set_config('app.firm_ids', ${firmIds.join(',')}, true)`;
}

/** Whether an error says that a unique constraint was violated. */
export function isUniqueViolation(error: unknown): boolean {
  return error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2002';
}
