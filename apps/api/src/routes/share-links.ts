import { createShareLink } from '@garboard/core/shares/create-share-link';
import { listShareLinks, listShareViewings } from '@garboard/core/shares/list-share-links';
import { lookUpShareLink, openShareLink, viewingMs } from '@garboard/core/shares/open-share-link';
import { revokeShareLink } from '@garboard/core/shares/revoke-share-link';
import {
  getSharedReport,
  getSharedReportData,
  getSharedReportPdf,
  getSharedReportPhotoImage,
  type Reader,
} from '@garboard/core/shares/shared-report';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { installAttemptLimits } from '../http/attempt-limits.ts';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveBytes } from '../http/serve-bytes.ts';
import { cookieOptions } from '../http/session.ts';

/** Links to one report: made by those who own it, opened by whoever holds them. */
export function shareLinkRoutes(app: FastifyInstance, deps: Deps): void {
  const { publicUrl } = deps.env;
  // A cookie a viewing, so that links opened side by side don't mix.
  const cookieOf = (viewingId: string) =>
    `${publicUrl.startsWith('https:') ? '__Host-' : ''}garboard_shared_${viewingId}`;
  const reader = (request: FastifyRequest, params: { id: string }): Reader => ({
    viewingId: params.id,
    viewing: request.cookies[cookieOf(params.id)],
  });

  serve(app, deps, 'createShareLink', (ctx, { params, body }) =>
    createShareLink(ctx, { reportId: params.id, link: body, publicUrl }),
  );
  serve(app, deps, 'listShareLinks', (ctx, { params, query }) =>
    listShareLinks(ctx, { reportId: params.id, ...query }),
  );
  serve(app, deps, 'revokeShareLink', (ctx, { params }) => revokeShareLink(ctx, params.id));
  serve(app, deps, 'listShareViewings', (ctx, { params, query }) =>
    listShareViewings(ctx, { shareLinkId: params.id, ...query }),
  );
  app.register(async (guarded) => {
    installAttemptLimits(guarded, deps);
    serve(guarded, deps, 'lookUpShareLink', (ctx, { body }) => lookUpShareLink(ctx, body.token));
    serve(guarded, deps, 'openSharedReport', async (ctx, { body, request, reply }) => {
      const userAgent = request.headers['user-agent'];
      const { viewing, shared } = await openShareLink(ctx, { ...body, userAgent });
      reply.setCookie(cookieOf(shared.id), viewing, {
        ...cookieOptions(publicUrl),
        sameSite: 'strict',
        maxAge: viewingMs / 1000,
      });
      return shared;
    });
  });
  serve(app, deps, 'getSharedReport', (ctx, { params, request }) =>
    getSharedReport(ctx, reader(request, params)),
  );
  serve(app, deps, 'getSharedReportData', (ctx, { params, request }) =>
    getSharedReportData(ctx, reader(request, params)),
  );
  serveBytes(app, deps, 'getSharedReportPdf', (ctx, { params, request }) =>
    getSharedReportPdf(ctx, reader(request, params)),
  );
  serveBytes(app, deps, 'getSharedReportPhotoImage', (ctx, { params, query, request }) =>
    getSharedReportPhotoImage(ctx, { ...reader(request, params), photoId: params.photoId, query }),
  );
}
