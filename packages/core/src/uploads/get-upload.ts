import type { UploadRecord } from '@garboard/contract/uploads';
import type { Ctx } from '../context.ts';
import { loadUpload, presentUpload } from './load-upload.ts';

/** How far an upload has come. @throws Refusal `not-found` */
export async function getUpload(ctx: Ctx, id: string): Promise<UploadRecord> {
  return presentUpload(await loadUpload(ctx, id));
}
