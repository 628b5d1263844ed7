import { PrismaPg } from '@prisma/adapter-pg';
import { Prisma, PrismaClient } from './generated/client.ts';
import { openReads, type Reads } from './reading.ts';
import { bindingTo } from './sight.ts';

export { Prisma };

/** A transaction: every function that reads or writes the database takes one, and nothing else does. */
export type Tx = Prisma.TransactionClient;

export interface Database {
  readonly prisma: PrismaClient;
  /** For `inReading` and `readAlone`. */
  readonly reads: Reads;
  /** Whether a pooler stands between, which hands a connection to another after each transaction. */
  readonly pooled?: boolean;
  close(): Promise<void>;
}

/** The role the application works under. It owns no table, so row-level security binds it. */
const applicationRole = 'garboard_app';

/**
 * Opens a pool of connections that work under the application's role.
 *
 * @param url address of the owner, who may become that role; @param connections most at once, and for reads two thirds as
 * many again; @param through.pooled whether the address is that of a pooler in transaction mode. Nothing may be set for a
 * whole connection then: the account that the pooler signs in with must be bound to the role, see `refuseOtherRole`.
 */
export function openDatabase(
  url: string,
  connections = 12,
  { pooled = false }: { pooled?: boolean } = {},
): Database {
  // Policies make plans look dear, and what is compiled for them costs more than a list takes to read.
  const options = pooled ? undefined : `-c role=${applicationRole} -c jit=off`;
  const adapter = new PrismaPg({ connectionString: url, max: connections, options });
  const prisma = new PrismaClient({ adapter, transactionOptions: { maxWait: 10_000, timeout: 30_000 } });
  // Plans for all values are as good as those for some here, and making them takes longer than running them.
  const prepared = options && `${options} -c plan_cache_mode=force_generic_plan`;
  const reads = openReads(url, Math.ceil((connections * 2) / 3), prepared);
  return {
    prisma,
    reads,
    pooled,
    async close() {
      await prisma.$disconnect();
      await reads.end();
    },
  };
}

/**
 * Makes sure that a pooler's connections work under the application's role: those of the owner would see everything.
 * @throws Error saying what to do
 */
export async function refuseOtherRole({ prisma }: Pick<Database, 'prisma'>): Promise<void> {
  const rows = await prisma.$queryRaw<{ role: string }[]>`SELECT current_user::text AS role`;
  if (rows[0]?.role === applicationRole) return;
  throw new Error(
    `The pooler at DATABASE_URL signs in as an account that works as ${rows[0]?.role}, not as ${applicationRole}. Give it one of its own with ALTER ROLE … SET role = '${applicationRole}'; see the README on PgBouncer.`,
  );
}

/** Whose rows a transaction may touch. Row-level security reads it; see the migration two_levels_of_sight. */
export interface Sight {
  /** Firms whose staff acts: all their rows. */
  firmIds: readonly string[];
  /** Who acts: what is theirs alone, and, as a party, what the surveys they take part in show them. */
  personId: string | null;
  /** Whether that person takes part in surveys of other firms. */
  asParty?: boolean;
  /** The one part, in one firm, to which an API key is limited. */
  key?: { firmId: string; role: string } | undefined;
}

/**
 * Runs work in one transaction that sees and may touch what this sight covers; everything is undone when it throws.
 *
 * @param sight firms alone mean Garboard itself, which may touch all rows of these
 */
export async function inTransaction<T>(
  db: Database,
  sight: Sight | readonly string[],
  work: (tx: Tx) => Promise<T>,
): Promise<T> {
  const whole: Sight = 'firmIds' in sight ? sight : { firmIds: sight, personId: null };
  return db.prisma.$transaction(async (tx) => {
    await tx.$executeRaw(bindingTo(whole));
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
