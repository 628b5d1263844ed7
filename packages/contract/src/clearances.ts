import { clearanceStates, decisions } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { actorRef, day, id, instant, line, sha256, text } from './common.ts';

/** The text parts of the multipart evidence form; its files come in parts named `file`. */
export const clearanceFields = z.strictObject({
  statement: text(20_000).min(1, 'Say what was done.'),
  workDoneBy: line(200),
  workDoneOn: day,
});

export const clearanceFile = z
  .object({
    id,
    fileName: z.string(),
    mediaType: z.string(),
    bytes: z.int(),
    sha256,
    width: z.int().nullable(),
    height: z.int().nullable(),
    url: z.string().meta({ description: 'The file itself; for a photo its screen size' }),
    thumbUrl: z.string().nullable(),
  })
  .meta({ id: 'ClearanceFile' });

export const clearance = z
  .object({
    id,
    findingId: id,
    state: z.enum(clearanceStates),
    statement: z.string(),
    workDoneBy: z.string(),
    workDoneOn: day,
    sentBy: actorRef,
    sentAt: instant,
    files: z.array(clearanceFile),
    decision: z.enum(decisions).nullable(),
    reason: z.string().nullable(),
    decidedBy: actorRef.nullable(),
    decidedAt: instant.nullable(),
  })
  .meta({ id: 'Clearance' });
export type Clearance = z.infer<typeof clearance>;

export const decisionBody = z
  .strictObject({ decision: z.enum(decisions), reason: text(4_000).default('') })
  .refine((d) => d.decision === 'accept' || d.reason.length > 0, {
    path: ['reason'],
    message: 'Give the reason: what is still missing, or the limit within which it is accepted.',
  });
export const clearanceFileParams = z.object({ id, fileId: id });
export const clearanceFileQuery = z.object({
  size: z.enum(['thumb', 'screen', 'original']).default('original'),
});
