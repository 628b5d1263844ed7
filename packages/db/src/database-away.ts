// What an error says of itself, however deep: Prisma wraps what its driver threw, which wraps what PostgreSQL said.
interface Told {
  code?: unknown;
  message?: unknown;
  kind?: unknown;
  originalCode?: unknown;
  cause?: unknown;
  meta?: unknown;
  driverAdapterError?: unknown;
}

/** Prisma: can't reach, timed out, closed, no connection to be had in time, too many, a conflict that may be tried again. */
const prismaCodes = new Set(['P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2028', 'P2034', 'P2037']);

/** PostgreSQL, appendix A: 08 connection, 53 no room or memory or connections, 57P ended by an operator or starting. */
const serverCodes = /^(08...|53...|57P0.|40001|40P01|25006)$/;
const socketCodes = new Set(['ECONNREFUSED', 'ECONNRESET', 'ETIMEDOUT', 'EPIPE', 'ENOTFOUND', 'EAI_AGAIN']);
const adapterKinds = new Set([
  'DatabaseNotReachable',
  'ConnectionClosed',
  'SocketTimeout',
  'TooManyConnections',
  'TransactionWriteConflict',
]);
/** What `pg` says without a code. */
const driverWords =
  /Connection terminated|timeout exceeded when trying to connect|Query read timeout|not queryable|Cannot use a pool after calling end/;

function says(error: Told): boolean {
  const codes = [error.code, error.originalCode].filter((code) => typeof code === 'string');
  if (codes.some((code) => prismaCodes.has(code) || serverCodes.test(code) || socketCodes.has(code)))
    return true;
  if (typeof error.kind === 'string' && adapterKinds.has(error.kind)) return true;
  return typeof error.message === 'string' && driverWords.test(error.message);
}

/**
 * Whether an error of a query or transaction says that the database is away, starting, out of room or too busy, so that
 * the same may succeed in a moment. What was asked was then either done whole or not at all.
 */
export function isDatabaseAway(error: unknown, depth = 0): boolean {
  if (typeof error !== 'object' || error === null || depth > 5) return false;
  const told: Told = error;
  return (
    says(told) ||
    [told.cause, told.meta, told.driverAdapterError].some((inner) => isDatabaseAway(inner, depth + 1))
  );
}
