import { idParams, page } from '../common.ts';
import * as library from '../photo-library.ts';
import * as uploads from '../uploads.ts';
import { route } from './route.ts';

/** Uploads that come in parts, and the firm’s photos over all its surveys. */
export const photosRoutes = {
  createUpload: route({
    method: 'POST',
    path: '/v1/surveys/{id}/uploads',
    tag: 'Photos',
    summary: 'Announce a photo that will come in parts; the same again answers how far it came',
    access: 'signed-in',
    permission: 'photo.write',
    params: idParams,
    body: uploads.uploadCreate,
    status: 201,
    response: uploads.upload,
    problems: ['too-large', 'wrong-state'],
  }),
  getUpload: route({
    method: 'GET',
    path: '/v1/uploads/{id}',
    tag: 'Photos',
    summary: 'How far an upload has come',
    access: 'signed-in',
    permission: 'photo.write',
    params: idParams,
    status: 200,
    response: uploads.upload,
  }),
  sendUploadPart: route({
    method: 'PATCH',
    path: '/v1/uploads/{id}',
    tag: 'Photos',
    summary:
      'Send the next part, at most 1 MiB, beginning at Upload-Offset; the last byte turns the upload into a photo',
    access: 'signed-in',
    permission: 'photo.write',
    params: idParams,
    part: true,
    status: 200,
    response: uploads.upload,
    problems: ['wrong-state', 'too-large', 'files-refused'],
  }),
  listPhotoLibrary: route({
    method: 'GET',
    path: '/v1/photo-library',
    tag: 'Photos',
    summary: 'Photos of all the firm’s surveys, latest first; for its staff',
    access: 'signed-in',
    permission: 'photo.write',
    query: library.photoLibraryQuery,
    status: 200,
    response: page(library.libraryPhoto),
    problems: ['not-allowed'],
  }),
};
