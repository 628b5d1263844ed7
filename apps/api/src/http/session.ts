import { hashToken } from '@garboard/core/people/tokens';
import { Refusal } from '@garboard/core/problems';
import { findSession } from '@garboard/db/special-reads';
import type { FirmRole } from '@garboard/trade/vocabulary';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Deps } from './deps.ts';

export const sessionCookie = 'garboard_session';

const safeMethods = new Set(['GET', 'HEAD', 'OPTIONS']);

/** A browser says where a write came from; with the cookie it must be our own pages. */
function refuseForeignOrigin(request: FastifyRequest, publicUrl: string): void {
  const { origin, host } = request.headers;
  const site = request.headers['sec-fetch-site'];
  const own = origin === undefined || origin === new URL(publicUrl).origin || new URL(origin).host === host;
  const sameSite = site === undefined || site === 'same-origin' || site === 'none';
  if (own && (origin !== undefined || sameSite)) return;
  throw new Refusal(
    'foreign-origin',
    'Changes signed by the session cookie must come from the portal itself.',
  );
}

/** Finds out who is asking, by bearer token or session cookie, and refuses strangers where signing in is needed. */
export function installSessions(app: FastifyInstance, deps: Deps): void {
  app.decorateRequest('actor', null);
  app.decorateRequest('sessionHash', null);
  app.addHook('onRequest', async (request) => {
    const route = request.routeOptions.config.route;
    if (!route) return;
    const bearer = /^Bearer (\S+)$/i.exec(request.headers.authorization ?? '')?.[1];
    const token = bearer ?? request.cookies[sessionCookie];
    if (!bearer && token && !safeMethods.has(request.method))
      refuseForeignOrigin(request, deps.env.publicUrl);
    if (token && route.access === 'signed-in') {
      const hash = hashToken(token);
      const row = await findSession(deps.db, hash);
      if (row) {
        request.sessionHash = hash;
        request.actor = {
          kind: 'person',
          personId: row.person_id,
          name: row.name,
          email: row.email,
          memberships: row.memberships.map((m) => ({ firmId: m.firmId, role: m.role as FirmRole })),
          firmIds: row.firm_ids,
        };
      }
    }
    if (route.access === 'signed-in' && !request.actor) {
      throw new Refusal(
        'not-signed-in',
        'You are not signed in, or your session has ended. Sign in and try again.',
      );
    }
  });
}
