import { createApiKey } from '@garboard/core/api-keys/create-api-key';
import { listApiKeys } from '@garboard/core/api-keys/list-api-keys';
import { revokeApiKey } from '@garboard/core/api-keys/revoke-api-key';
import { erasePerson } from '@garboard/core/own-data/erase-person';
import { exportOwnData } from '@garboard/core/own-data/export-own-data';
import { askSignInLink } from '@garboard/core/people/ask-sign-in-link';
import { beginSecondFactor } from '@garboard/core/people/begin-second-factor';
import { changePassword } from '@garboard/core/people/change-password';
import { confirmSecondFactor } from '@garboard/core/people/confirm-second-factor';
import { getMe } from '@garboard/core/people/get-me';
import { getSignInMeans } from '@garboard/core/people/get-sign-in-means';
import { removeSecondFactor, renewRecoveryCodes } from '@garboard/core/people/remove-second-factor';
import { endOtherSessions, endSession, listSessions } from '@garboard/core/people/sessions';
import { signIn } from '@garboard/core/people/sign-in';
import { signOut } from '@garboard/core/people/sign-out';
import { lookUpWelcome, useWelcome } from '@garboard/core/people/welcome';
import { openSealer } from '@garboard/platform/sealing';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { installAttemptLimits } from '../http/attempt-limits.ts';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { cookieOptions, originOf, sessionCookie } from '../http/session.ts';

/** Signing in and out, and what each person decides about that. */
export function accountRoutes(app: FastifyInstance, deps: Deps): void {
  const { publicUrl } = deps.env;
  const cookie = cookieOptions(publicUrl);
  const signedIn = <T extends { token: string; expiresAt: string; person?: { id: string } }>(
    reply: FastifyReply,
    session: T,
  ): T => {
    const { actor, log, routeOptions } = reply.request;
    const person = session.person?.id ?? (actor?.kind === 'person' ? actor.personId : undefined);
    log.info({ route: routeOptions.url, person }, 'session begun');
    reply.setCookie(sessionCookie(publicUrl), session.token, {
      ...cookie,
      expires: new Date(session.expiresAt),
    });
    return session;
  };
  // Pictures and documents may be cached for their reader; whoever sits here next is another. What was written and not
  // yet sent stays with its person, so storage is left alone.
  const forgetHere = (reply: FastifyReply) =>
    reply.clearCookie(sessionCookie(publicUrl), cookie).header('clear-site-data', '"cache"');
  const sealing = () => openSealer(deps.env);

  app.register(async (guarded) => {
    installAttemptLimits(guarded, deps);
    serve(guarded, deps, 'createSession', async (ctx, { body, request, reply }) =>
      signedIn(reply, await signIn(ctx, { ...body, origin: originOf(request), sealer: await sealing() })),
    );
    serve(guarded, deps, 'askSignInLink', (ctx, { body }) => askSignInLink(ctx, body));
    serve(guarded, deps, 'lookUpWelcome', (ctx, { body }) => lookUpWelcome(ctx, body.token));
    serve(guarded, deps, 'useWelcome', async (ctx, { body, request, reply }) =>
      signedIn(reply, await useWelcome(ctx, { ...body, origin: originOf(request), sealer: await sealing() })),
    );
    serve(guarded, deps, 'changePassword', async (ctx, { body, request, reply }) =>
      signedIn(reply, await changePassword(ctx, { ...body, origin: originOf(request) })),
    );
    serve(guarded, deps, 'beginSecondFactor', async (ctx, { body, request }) => {
      const { sessionHash } = request;
      const { currentPassword } = body;
      return beginSecondFactor(ctx, { sessionHash, currentPassword, sealer: await sealing() });
    });
    serve(guarded, deps, 'confirmSecondFactor', async (ctx, { body, request, reply }) =>
      signedIn(
        reply,
        await confirmSecondFactor(ctx, { ...body, origin: originOf(request), sealer: await sealing() }),
      ),
    );
    serve(guarded, deps, 'removeSecondFactor', async (ctx, { body }) =>
      removeSecondFactor(ctx, { ...body, sealer: await sealing() }),
    );
    serve(guarded, deps, 'renewRecoveryCodes', async (ctx, { body }) =>
      renewRecoveryCodes(ctx, { ...body, sealer: await sealing() }),
    );
    serve(guarded, deps, 'eraseMe', async (ctx, { body, request: { sessionHash }, reply }) => {
      await erasePerson(ctx, { ...body, currentPassword: body.currentPassword, sessionHash });
      forgetHere(reply);
    });
    serve(guarded, deps, 'createApiKey', (ctx, { body, request: { sessionHash } }) =>
      createApiKey(ctx, { ...body, sessionHash }),
    );
  });
  serve(app, deps, 'exportOwnData', (ctx) => exportOwnData(ctx));
  serve(app, deps, 'deleteSession', async (ctx, { request, reply }) => {
    await signOut(ctx, request.sessionHash);
    forgetHere(reply);
  });
  serve(app, deps, 'listSessions', (ctx, { query, request: { sessionHash } }) =>
    listSessions(ctx, { ...query, sessionHash }),
  );
  serve(app, deps, 'endSession', (ctx, { params }) => endSession(ctx, params.id));
  serve(app, deps, 'endOtherSessions', (ctx, { request }) => endOtherSessions(ctx, request.sessionHash));
  serve(app, deps, 'getSignInMeans', (ctx, { request }) => getSignInMeans(ctx, request.sessionHash));
  serve(app, deps, 'getMe', (ctx) => getMe(ctx));
  serve(app, deps, 'listApiKeys', (ctx, { query }) => listApiKeys(ctx, query));
  serve(app, deps, 'revokeApiKey', (ctx, { params }) => revokeApiKey(ctx, params.id));
}
