import { createUpload } from '@garboard/core/uploads/create-upload';
import { getUpload } from '@garboard/core/uploads/get-upload';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { servePart } from '../http/serve-part.ts';

export function uploadRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'createUpload', (ctx, { params, body }) =>
    createUpload(ctx, { surveyId: params.id, upload: body }),
  );
  serve(app, deps, 'getUpload', (ctx, { params }) => getUpload(ctx, params.id));
  servePart(app, deps, 'sendUploadPart');
}
