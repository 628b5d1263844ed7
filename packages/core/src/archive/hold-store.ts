import { type Database, inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';

/** How long a hold outlives whoever forgot to end it, and how often it is made longer. */
const holdMs = 15 * 60_000;
const renewMs = 4 * 60_000;

/**
 * Runs work while no stored file is removed: a snapshot of rows may be taken, and the files they name copied after it.
 * A process that is killed meanwhile leaves a hold that ends by itself.
 *
 * @param what for whoever looks into the table, in words
 */
export async function whileStoreHeld<T>(db: Database, what: string, work: () => Promise<T>): Promise<T> {
  const id = newId();
  const hold = () =>
    inTransaction(
      db,
      [],
      (tx) => tx.$executeRaw`
        INSERT INTO store_holds (id, what, until)
        VALUES (${id}::uuid, ${what}, clock_timestamp() + ${holdMs} * interval '1 millisecond')
        ON CONFLICT (id) DO UPDATE SET until = excluded.until`,
    );
  await inTransaction(
    db,
    [],
    (tx) => tx.$executeRaw`DELETE FROM store_holds WHERE until < clock_timestamp()`,
  );
  await hold();
  // One renewal that fails is made up for by the next, well before the hold ends.
  const timer = setInterval(() => void hold().catch(() => undefined), renewMs);
  try {
    return await work();
  } finally {
    clearInterval(timer);
    await inTransaction(db, [], (tx) => tx.storeHold.deleteMany({ where: { id } }));
  }
}
