import { z } from 'zod';
import { id, instant, sha256, text } from './common.ts';

/** Most bytes of one request that sends a part of an upload. */
export const partBytes = 1024 * 1024;
/** The kind of body that such a request has. */
export const partMediaType = 'application/offset+octet-stream';
/** The header that says where the part begins; answers carry it too. */
export const partOffsetHeader = 'upload-offset';

export const uploadCreate = z.strictObject({
  id: id.meta({
    description: 'Made by the client (UUIDv7); the photo gets the same. Sending it again is safe',
  }),
  name: z.string().max(400).meta({ description: 'The file’s name, as people know it' }),
  bytes: z.int().min(1, 'The file is empty. Take the photo again.'),
  sha256,
  takenAt: instant
    .optional()
    .meta({ description: 'Used when the picture itself doesn’t say when it was taken' }),
  caption: text(500).optional(),
  findingId: id
    .optional()
    .meta({ description: 'A finding of the survey, to which the photo is added at its end' }),
});

/** An upload that comes in parts and survives a broken connection, a reload and a restart of the server. */
export const upload = z
  .object({
    id,
    surveyId: id,
    received: z.int().meta({ description: 'Bytes that are safe; the next part begins here' }),
    bytes: z.int(),
    state: z.enum(['receiving', 'kept', 'refused']),
    photoId: id.nullable().meta({
      description: 'The photo it became: the upload’s own id, or that of a photo with the same bytes',
    }),
    problem: z.string().nullable().meta({ description: 'Why the picture was refused, and what to do' }),
  })
  .meta({ id: 'Upload' });
export type UploadRecord = z.infer<typeof upload>;
