import { Prisma } from './generated/client.ts';

/** Prisma: a record that an operation needs isn't there; a reference to one that isn't. */
const codes = new Set(['P2025', 'P2003']);

/**
 * Whether an error says that something wasn't there any more: it was found when the request began, and somebody else
 * has removed it since. The transaction is undone then.
 */
export const goneMeanwhile = (error: unknown): boolean =>
  error instanceof Prisma.PrismaClientKnownRequestError && codes.has(error.code);
