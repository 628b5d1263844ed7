import { deletePhoto } from '@garboard/core/photos/delete-photo';
import { getPhoto } from '@garboard/core/photos/get-photo';
import { getPhotoImage } from '@garboard/core/photos/get-photo-image';
import { listPhotoLibrary } from '@garboard/core/photos/list-photo-library';
import { listPhotos } from '@garboard/core/photos/list-photos';
import { updatePhoto } from '@garboard/core/photos/update-photo';
import { mayUploadPhotos, uploadPhotos } from '@garboard/core/photos/upload-photos';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';
import { serveBytes } from '../http/serve-bytes.ts';
import { serveForm } from '../http/serve-form.ts';

export function photoRoutes(app: FastifyInstance, deps: Deps): void {
  serveForm(app, deps, 'uploadPhotos', {
    accepts: 'pictures',
    before: (ctx, params) => mayUploadPhotos(ctx, params.id),
    handler: (ctx, { params, upload }) => uploadPhotos(ctx, { surveyId: params.id, upload }),
  });
  serve(app, deps, 'listPhotos', (ctx, { params, query }) => listPhotos(ctx, { surveyId: params.id, query }));
  serve(app, deps, 'listPhotoLibrary', (ctx, { query }) => listPhotoLibrary(ctx, query));
  serve(app, deps, 'getPhoto', (ctx, { params }) => getPhoto(ctx, params.id));
  serve(app, deps, 'updatePhoto', (ctx, { params, body, ifMatch }) =>
    updatePhoto(ctx, { id: params.id, patch: body, ifMatch }),
  );
  serve(app, deps, 'deletePhoto', async (ctx, { params }) => {
    await deletePhoto(ctx, params.id);
    return undefined;
  });
  serveBytes(app, deps, 'getPhotoImage', (ctx, { params, query }) =>
    getPhotoImage(ctx, { id: params.id, query }),
  );
}
