import { addMember } from '@garboard/core/firms/add-member';
import { listMembers } from '@garboard/core/firms/list-members';
import { getFirm, updateFirm } from '@garboard/core/firms/update-firm';
import { getMe } from '@garboard/core/people/get-me';
import { signIn } from '@garboard/core/people/sign-in';
import { signOut } from '@garboard/core/people/sign-out';
import { lookUpWelcome, useWelcome } from '@garboard/core/people/welcome';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { installAttemptLimits } from '../http/attempt-limits.ts';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { sessionCookie } from '../http/session.ts';

export function peopleRoutes(app: FastifyInstance, deps: Deps): void {
  const cookie = {
    path: '/',
    httpOnly: true,
    sameSite: 'lax',
    secure: deps.env.publicUrl.startsWith('https:'),
  } as const;
  const signedIn = <T extends { token: string; expiresAt: string }>(reply: FastifyReply, session: T): T => {
    reply.setCookie(sessionCookie, session.token, { ...cookie, expires: new Date(session.expiresAt) });
    return session;
  };

  app.register(async (guarded) => {
    installAttemptLimits(guarded);
    serve(guarded, deps, 'createSession', async (ctx, { body, reply }) =>
      signedIn(reply, await signIn(ctx, body)),
    );
    serve(guarded, deps, 'lookUpWelcome', (ctx, { body }) => lookUpWelcome(ctx, body.token));
    serve(guarded, deps, 'useWelcome', async (ctx, { body, reply }) =>
      signedIn(reply, await useWelcome(ctx, body)),
    );
  });
  serve(app, deps, 'deleteSession', async (ctx, { request, reply }) => {
    await signOut(ctx, request.sessionHash);
    reply.clearCookie(sessionCookie, cookie);
  });
  serve(app, deps, 'getMe', (ctx) => getMe(ctx));
  serve(app, deps, 'getFirm', (ctx, { params }) => getFirm(ctx, params.id));
  serve(app, deps, 'updateFirm', (ctx, { params, body, ifMatch }) =>
    updateFirm(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'listMembers', (ctx, { params, query }) =>
    listMembers(ctx, { firmId: params.id, ...query }),
  );
  serve(app, deps, 'addMember', (ctx, { params, body }) =>
    addMember(ctx, { firmId: params.id, member: body }),
  );
}
