import { createHash } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';

/** Failed attempts allowed in the window for one account from one address. */
const perAccount = 10;
/** Attempts allowed in the window from one network address, whatever the account. */
const perAddress = 300;
const windowMs = 5 * 60_000;

/** Who is being tried, by hash, so that no address or token is kept in the counter's memory. */
function accountKey(request: FastifyRequest): string {
  const body = request.body as { email?: string; token?: string } | undefined;
  const account = body?.email ?? body?.token ?? '';
  return createHash('sha256').update(`${request.ip} ${account}`).digest('hex');
}

/**
 * Limits guessing on the routes of this scope. Only failures count towards an account's limit, so that a firm
 * signing in all day isn't locked out; the network address is limited on every attempt.
 */
export function installAttemptLimits(app: FastifyInstance): void {
  const failures = new Map<string, { count: number; since: number }>();
  const byAddress = app.rateLimit({
    max: perAddress,
    timeWindow: windowMs,
    errorResponseBuilder: () => tooMany(windowMs),
  });
  app.addHook('onRequest', byAddress);
  app.addHook('preHandler', async (request, reply) => {
    const entry = failures.get(accountKey(request));
    if (!entry) return;
    const left = entry.since + windowMs - Date.now();
    if (left <= 0) failures.delete(accountKey(request));
    else if (entry.count >= perAccount) {
      reply.header('retry-after', Math.ceil(left / 1000));
      throw tooMany(left);
    }
  });
  app.addHook('onResponse', async (request, reply) => {
    const key = accountKey(request);
    if (reply.statusCode === 401 || reply.statusCode === 410) {
      const entry = failures.get(key) ?? { count: 0, since: Date.now() };
      entry.count += 1;
      failures.set(key, entry);
      if (failures.size > 100_000) failures.delete(failures.keys().next().value ?? '');
    } else if (reply.statusCode < 300) failures.delete(key);
  });
}

function tooMany(leftMs: number): Error & { statusCode: number } {
  const minutes = Math.max(1, Math.ceil(leftMs / 60_000));
  const when = minutes === 1 ? 'in a minute' : `in ${minutes} minutes`;
  return Object.assign(new Error(`Too many attempts. Try again ${when}.`), { statusCode: 429 });
}
