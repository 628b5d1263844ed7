import { isIP } from 'node:net';

/**
 * What may stand in a log. Ids may; people's names, addresses, words and file names may not, nor what opens a door. So
 * requests are logged by their route, errors without the values they quote, and every line passes a net at the end.
 */

/** Errors whose words are for people, with what these wrote in them; their kind has to do. */
const wordsForPeople = new Set(
  'Refusal PrintError NoRetryError MailRefusedError InputsRefused ArchiveRefused ZodError ProblemError'.split(
    ' ',
  ),
);

/** Facts of errors of the database, the mail server, the disk and the network that name no person. */
const facts = [
  ...['code', 'errno', 'syscall', 'statusCode', 'responseCode', 'type', 'severity', 'routine'],
  ...['schema', 'table', 'column', 'constraint', 'signal', 'killed', 'status'],
];

/** An error as it is logged: kind, facts, words without values, where it was thrown, and what caused it. */
export function loggedError(error: unknown, depth = 0): unknown {
  if (!(error instanceof Error)) return { type: typeof error };
  const record = error as Error & Record<string, unknown>;
  const logged: Record<string, unknown> = { name: error.name };
  for (const fact of facts) {
    const value = record[fact];
    if (typeof value === 'number' || typeof value === 'boolean') logged[fact] = value;
    if (typeof value === 'string') logged[fact] = withoutValues(value);
  }
  const { modelName, code } = (record.meta ?? {}) as { modelName?: string; code?: string };
  if (modelName) logged.model = modelName;
  if (code) logged.databaseCode = code;
  if (!wordsForPeople.has(error.name)) logged.message = withoutValues(gist(error));
  const frames = error.stack?.split('\n').filter((line) => /^\s+at /.test(line));
  if (frames?.length) logged.stack = frames.join('\n');
  if (error.cause !== undefined && depth < 3) logged.cause = loggedError(error.cause, depth + 1);
  return logged;
}

/** The database client prints the call with its arguments; what went wrong is the last line. */
function gist(error: Error): string {
  if (!error.name.startsWith('Prisma')) return error.message;
  return error.message.trim().split('\n').at(-1) ?? '';
}

const files =
  /[^\s/\\"“”«»]+\.(jpe?g|png|webp|gif|tiff?|hei[cf]|avif|svg|pdf|csv|docx?|xlsx?|zip|p12|pfx|eml)\b/gi;

/** A sentence without what it quotes (names of the database such as a_b stay), the paths of addresses, and files by the names their owners gave them. */
export function withoutValues(words: string): string {
  return words
    .replace(/"[^"\n]*"|“[^”\n]*”|(?<!\w)'[^'\n]*'(?!\w)/g, (quoted) =>
      /^"[a-z]+(_[a-z0-9]+)+"$/.test(quoted) ? quoted : '[…]',
    )
    .replace(/(https?:\/\/[^\s/?#]+)[^\s)]*/gi, '$1/…')
    .replace(files, '[file]')
    .slice(0, 2_000);
}

/** The network a request comes from, not whose of it: of IPv4 three bytes of four, of IPv6 48 bits. */
function networkOf(address: unknown): string | undefined {
  if (typeof address !== 'string') return undefined;
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, '');
  if (isIP(plain) === 4) return plain.replace(/\d+$/, '0/24');
  if (isIP(plain) !== 6) return undefined;
  return `${plain.split('::')[0]?.split(':').slice(0, 3).join(':')}::/48`;
}

interface LoggedRequest {
  method?: unknown;
  ip?: unknown;
  routeOptions?: { url?: string };
  params?: unknown;
}

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** A request by its route and the ids in its address; what is no id, such as a link's secret, is left out. */
function loggedRequest(request: LoggedRequest): Record<string, unknown> {
  const params = Object.entries(request.params ?? {}).filter(
    ([, value]) => typeof value === 'string' && uuid.test(value),
  );
  return {
    method: request.method,
    route: request.routeOptions?.url ?? 'none',
    ...(params.length > 0 ? { ids: Object.fromEntries(params) } : {}),
    network: networkOf(request.ip),
  };
}

const words = (value: unknown) => (typeof value === 'string' ? withoutValues(value) : value);

/** How what is logged under these names is written. */
export const logSerializers = {
  err: (error: unknown) => loggedError(error),
  req: loggedRequest,
  problem: words,
  url: words,
  words,
};

/** The net at the end: addresses of mail, keys and tokens, however they came into a line. */
export function netted(line: string): string {
  // Most lines have none, and looking for what stands before an @ takes long.
  const addressless = line.includes('@')
    ? line.replace(/[\p{L}\p{N}._%+-]+@[\p{L}\p{N}-]+(\.[\p{L}\p{N}-]+)+/gu, '[address]')
    : line;
  return addressless.replace(/gbk_[\w-]+/g, '[key]').replace(/(?<![\w-])[\w-]{43}(?![\w-])/g, '[token]');
}
