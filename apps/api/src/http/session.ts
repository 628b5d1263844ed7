import type { Route } from '@garboard/contract/routes';
import type { PersonActor } from '@garboard/core/access/actor';
import type { Origin } from '@garboard/core/people/start-session';
import { apiKeyPrefix, hashToken } from '@garboard/core/people/tokens';
import { Refusal } from '@garboard/core/problems';
import { findSession, useApiKey } from '@garboard/db/special-reads';
import type { Role } from '@garboard/trade/permissions';
import type { FirmRole } from '@garboard/trade/vocabulary';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Deps } from './deps.ts';
import { type People, rememberPeople } from './remembered.ts';
import { noteUse } from './session-person.ts';

const safeMethods = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Over https the browser itself keeps the cookie to this host, its every path and secure connections. */
export const sessionCookie = (publicUrl: string): string =>
  publicUrl.startsWith('https:') ? '__Host-garboard_session' : 'garboard_session';

/** What every cookie of ours is set with. */
export const cookieOptions = (publicUrl: string) =>
  ({ path: '/', httpOnly: true, sameSite: 'lax', secure: publicUrl.startsWith('https:') }) as const;

/** Whether pages of this origin are ours: of the public address, or of the host that was asked. */
const isOurs = (origin: string, host: string | undefined, publicUrl: string): boolean =>
  origin === new URL(publicUrl).origin || (URL.canParse(origin) && new URL(origin).host === host);

/**
 * A browser says where a write came from: it must be our own pages, signed in or not, or another site could sign
 * somebody in as someone else. Programs say nothing, or bring a key.
 */
function refuseForeignOrigin(request: FastifyRequest, publicUrl: string): void {
  const { origin, host } = request.headers;
  const site = request.headers['sec-fetch-site'];
  // “null”, of a page in a sandbox or from a file, is nobody's.
  const own = origin === undefined || isOurs(origin, host, publicUrl);
  const sameSite = site === undefined || site === 'same-origin' || site === 'none';
  if (own && (origin !== undefined || sameSite)) return;
  throw new Refusal('foreign-origin', 'A browser may ask for changes from the portal’s own pages only.');
}

/** Where a request comes from, for the session that it may begin. */
export const originOf = (request: FastifyRequest): Origin => ({
  userAgent: request.headers['user-agent'],
  address: request.ip,
  sessionHash: request.sessionHash,
});

async function personOfSession(
  request: FastifyRequest,
  deps: Deps,
  tokenHash: string,
  people: People,
): Promise<PersonActor | null> {
  const row = await findSession(deps.db, tokenHash);
  if (!row) return null;
  request.sessionHash = tokenHash;
  await noteUse(request, deps, tokenHash, row.last_seen_at);
  return people.remember(tokenHash, row);
}

async function personOfKey(deps: Deps, tokenHash: string): Promise<PersonActor | null> {
  const row = await useApiKey(deps.db, tokenHash);
  if (!row) return null;
  const { firm_id: firmId, access } = row;
  return {
    kind: 'person',
    personId: row.person_id,
    name: row.name,
    email: row.email,
    memberships: row.is_staff ? [{ firmId, role: row.role as FirmRole }] : [],
    firmIds: [firmId],
    key: { id: row.key_id, firmId, role: row.role as Role, access: access === 'write' ? 'write' : 'read' },
  };
}

/** What no key may do: a key to read, change anything; any key, what is its person's own affair alone. */
function refuseToKey(actor: PersonActor, route: Route): void {
  if (!actor.key) return;
  if (route.path.startsWith('/v1/me/')) {
    throw new Refusal('not-allowed', 'Sign in as yourself for this; a key for programs can’t do it.');
  }
  if (actor.key.access === 'read' && !safeMethods.has(route.method) && !route.keepsNothing) {
    throw new Refusal(
      'not-allowed',
      'This key may only read. Make one that may write under “Your account” if the program needs it.',
    );
  }
}

interface Asked {
  request: FastifyRequest;
  deps: Deps;
  route: Route;
  people: People;
}

/** Asks who the session or key of a request belongs to. @throws Refusal `not-signed-in` where that is needed */
async function signIn({ request, deps, route, people }: Asked, token: Token): Promise<void> {
  const actor = token.isKey
    ? await personOfKey(deps, token.hash)
    : await personOfSession(request, deps, token.hash, people);
  if (!actor) refuseStranger();
  refuseToKey(actor, route);
  request.actor = actor;
}

/** What a request brings to say who asks. */
interface Token {
  hash: string;
  isKey: boolean;
}

function refuseStranger(): never {
  throw new Refusal(
    'not-signed-in',
    'You are not signed in, or your session has ended. Sign in and try again.',
  );
}

/** Finds out who is asking, by bearer token, key or session cookie, and refuses strangers where signing in is needed. */
export function installSessions(app: FastifyInstance, deps: Deps): void {
  const { publicUrl } = deps.env;
  app.decorateRequest('actor', null);
  app.decorateRequest('sessionHash', null);
  const people = rememberPeople(app, deps);
  app.addHook('onRequest', async (request) => {
    const route = request.routeOptions.config.route;
    if (!route) return;
    const bearer = /^Bearer (\S+)$/i.exec(request.headers.authorization ?? '')?.[1];
    const token = bearer ?? request.cookies[sessionCookie(publicUrl)];
    if (!bearer && !safeMethods.has(request.method)) refuseForeignOrigin(request, publicUrl);
    const isKey = bearer?.startsWith(apiKeyPrefix) ?? false;
    if (route.access !== 'signed-in') {
      // Signing in anew ends the session that was there.
      if (token && !isKey) request.sessionHash = hashToken(token);
      return;
    }
    if (!token) refuseStranger();
    const brought = { isKey, hash: hashToken(token) };
    const again = () => signIn({ request, deps, route, people }, brought);
    if (!request.routeOptions.config.reads || !people.guess(request, brought.hash, again)) await again();
  });
}
