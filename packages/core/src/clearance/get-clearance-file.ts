import type { clearanceFileQuery } from '@garboard/contract/clearances';
import type { z } from 'zod';
import { isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import type { ServedFile } from '../files/served-file.ts';
import { notFound, Refusal } from '../problems.ts';
import { loadClearance } from './load-clearance.ts';

export interface GetClearanceFile {
  id: string;
  fileId: string;
  query: z.output<typeof clearanceFileQuery>;
}

/**
 * Which stored file is a piece of evidence, or a picture's size. An original picture may say where it was taken, so
 * outside the firm the screen size stands for it; a document is always handed over as it came.
 *
 * @throws Refusal `not-found`, also while a size is being made; `not-allowed`
 */
export async function getClearanceFile(
  ctx: Ctx,
  { id, fileId, query }: GetClearanceFile,
): Promise<ServedFile> {
  const clearance = await loadClearance(ctx, id);
  const file = clearance.files.find((f) => f.id === fileId);
  if (!file) throw notFound('file');
  const { sha256, mediaType, fileName } = file;
  if (!mediaType.startsWith('image/'))
    return { sha256, mediaType, fileName, immutable: false, download: true };
  if (query.size === 'original' && isStaff(ctx.actor, clearance)) {
    return { sha256, mediaType, fileName, immutable: false, download: false };
  }
  const hash = query.size === 'thumb' ? file.thumbHash : file.screenHash;
  if (!hash) {
    throw new Refusal('not-found', 'This picture is still being prepared. Ask again in a moment.');
  }
  const name = `${fileName.replace(/\.[a-z0-9]{1,5}$/i, '')}.jpg`;
  return { sha256: hash, mediaType: 'image/jpeg', fileName: name, immutable: false, download: false };
}
