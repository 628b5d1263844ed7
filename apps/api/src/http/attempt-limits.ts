import { isIPv6 } from 'node:net';
import type { RouteName } from '@garboard/contract/routes';
import { type AttemptLimit, countAttempt, forgetAttempts } from '@garboard/core/people/attempts';
import { hashToken } from '@garboard/core/people/tokens';
import { Refusal } from '@garboard/core/problems';
import { inTransaction, type Tx } from '@garboard/db/database';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Deps } from './deps.ts';

const minuteMs = 60_000;

/** Attempts of every kind from one network address. */
const perAddress = { most: 300, spanMs: 5 * minuteMs };

/**
 * Attempts at one account's secret: few from one address, and a ceiling from all addresses together. An hour can touch
 * five spans of a quarter, so the ceiling is more than five times the few: one stranger, however persistent, doesn't
 * hold up the owner elsewhere. A code has six digits, so its ceiling is low. Success forgets what was counted.
 */
const perSecret = {
  password: { near: 10, all: 60 },
  code: { near: 5, all: 30 },
  passcode: { near: 10, all: 60 },
  token: { near: 10, all: 60 },
};
const [nearMs, allMs] = [15 * minuteMs, 60 * minuteMs];

/** Mails that may be asked for to one address, and from one network address. */
const perMail = { most: 5, spanMs: 15 * minuteMs };
const mailsFromAddress = { most: 30, spanMs: 60 * minuteMs };

/** Documents looked up from one network address: far more than a reader asks, far fewer than would find a code. */
const perReader = { most: 60, spanMs: minuteMs };

interface Tried {
  secret?: keyof typeof perSecret;
  whose: string;
}
type Body = { email?: string; token?: string; code?: string; currentPassword?: string; passcode?: string };

/** One network address; of IPv6 the half that names the network, since its user has all of the other half. */
export function networkOf(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped || !isIPv6(address)) return mapped ?? address;
  const [head = '', tail] = address.split('%', 1)[0]?.split('::') ?? [];
  const before = head ? head.split(':') : [];
  const after = tail ? tail.split(':') : [];
  const zeros = tail === undefined ? 0 : 8 - before.length - after.length;
  const all = [...before, ...Array<string>(Math.max(0, zeros)).fill('0'), ...after];
  return `${all
    .slice(0, 4)
    .map((part) => Number.parseInt(part, 16).toString(16))
    .join(':')}::/64`;
}

/** Whose link this is. */
async function addressee(tx: Tx, token: string): Promise<string> {
  const link = await tx.oneTimeLink.findUnique({ where: { tokenHash: hashToken(token) } });
  return link?.email ?? token;
}

/** What a request tries, and on whom. */
async function triedBy(tx: Tx, request: FastifyRequest): Promise<Tried[]> {
  const body = (request.body ?? {}) as Body;
  const own = request.actor?.kind === 'person' ? request.actor.email : undefined;
  const { token } = body;
  const tried: Tried[] = [];
  if (token !== undefined) tried.push({ secret: 'token', whose: token });
  if (body.passcode !== undefined) tried.push({ secret: 'passcode', whose: token ?? '' });
  if (body.code !== undefined) {
    const whose = own ?? body.email ?? (token === undefined ? '' : await addressee(tx, token));
    tried.push({ secret: 'code', whose });
  }
  if (own !== undefined && body.currentPassword !== undefined) tried.push({ secret: 'password', whose: own });
  const asksMail: RouteName = 'askSignInLink';
  if (own === undefined && body.email !== undefined && token === undefined) {
    const mail = request.routeOptions.config.name === asksMail;
    tried.push(mail ? { whose: body.email } : { secret: 'password', whose: body.email });
  }
  return tried;
}

function limitsOn({ secret, whose }: Tried, network: string): AttemptLimit[] {
  if (!secret) {
    return [
      { kind: 'mail', whose, ...perMail },
      { kind: 'mails from', whose: network, ...mailsFromAddress },
    ];
  }
  const { near, all } = perSecret[secret];
  return [
    { kind: secret, whose: `${whose} ${network}`, most: near, spanMs: nearMs },
    { kind: secret, whose, most: all, spanMs: allMs },
  ];
}

/** Says that what was given was right and something more is asked for, so nothing was guessed. */
const askedForMore = (error: unknown): boolean =>
  error instanceof Refusal && (error.type === 'code-needed' || error.type === 'invalid-input');

/**
 * Limits guessing on the routes of this scope, for all processes together: counts are in the database. Each attempt is
 * counted before it is judged and forgotten when it succeeds, so that a firm signing in all day isn't locked out; the
 * network address is limited whatever comes of it.
 */
export function installAttemptLimits(app: FastifyInstance, deps: Deps): void {
  app.decorateRequest('tried', null);
  const forget = async (request: FastifyRequest) => {
    const secrets = request.tried?.filter(({ secret }) => secret) ?? [];
    const limits = secrets.flatMap((one) => limitsOn(one, networkOf(request.ip)));
    if (limits.length > 0) await inTransaction(deps.db, [], (tx) => forgetAttempts(tx, limits));
    request.tried = null;
  };
  app.addHook('preHandler', async (request, reply) => {
    const network = networkOf(request.ip);
    const overMs = await inTransaction(deps.db, [], async (tx) => {
      const tried = await triedBy(tx, request);
      request.tried = tried;
      const limits = tried.flatMap((one) => limitsOn(one, network));
      return countAttempt(tx, [{ kind: 'address', whose: network, ...perAddress }, ...limits], deps.clock());
    });
    if (overMs <= 0) return;
    request.tried = null;
    reply.header('retry-after', Math.ceil(overMs / 1000));
    throw tooMany(overMs);
  });
  app.addHook('onError', async (request, _reply, error) => {
    if (askedForMore(error)) await forget(request);
  });
  app.addHook('onSend', async (request, reply) => {
    if (reply.statusCode < 300) await forget(request);
  });
}

/** Limits how many documents strangers look up from one network address, for all processes together. */
export function installLookUpLimit(app: FastifyInstance, deps: Deps): void {
  app.addHook('preHandler', async (request, reply) => {
    const limit = { kind: 'look up', whose: networkOf(request.ip), ...perReader };
    const overMs = await inTransaction(deps.db, [], (tx) => countAttempt(tx, [limit], deps.clock()));
    if (overMs <= 0) return;
    reply.header('retry-after', Math.ceil(overMs / 1000));
    const words = 'Too many documents were looked up from here. Try again in a minute.';
    throw Object.assign(new Error(words), { statusCode: 429 });
  });
}

function tooMany(leftMs: number): Error & { statusCode: number } {
  const minutes = Math.max(1, Math.ceil(leftMs / minuteMs));
  const when = minutes === 1 ? 'in a minute' : `in ${minutes} minutes`;
  return Object.assign(new Error(`Too many attempts. Try again ${when}.`), { statusCode: 429 });
}

declare module 'fastify' {
  interface FastifyRequest {
    tried: Tried[] | null;
  }
  interface FastifyContextConfig {
    name?: RouteName;
  }
}
