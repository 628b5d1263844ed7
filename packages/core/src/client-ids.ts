import { Prisma } from '@garboard/db/database';
import { wrongState } from './problems.ts';

/** The id that the client made is already the name of another record. */
export const idTaken = (what: string) =>
  wrongState(`This id already names something else. Make a new id for this ${what} and send it again.`);

/** Waits for a create under the client's id. @throws Refusal `wrong-state` when a record elsewhere has that id */
export async function unlessTaken<T>(create: Promise<T>, what: string): Promise<T> {
  try {
    return await create;
  } catch (error) {
    const duplicate = error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2002';
    throw duplicate ? idTaken(what) : error;
  }
}
