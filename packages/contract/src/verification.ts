import { reportKinds } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { instant, sha256 } from './common.ts';
import { plainCode } from './verification-code.ts';

/** What is typed may hold spaces, hyphens and small letters; anything that isn't a code simply names nothing. */
export const codeParams = z.object({ code: z.string().max(60).overwrite(plainCode) });

export const verifyFile = z.strictObject({ sha256 });

/** What anybody may learn of a document: that it is genuine and whether it still stands; nothing of its contents. */
export const verification = z
  .object({
    verdict: z
      .enum(['genuine', 'superseded', 'unknown'])
      .meta({ description: '`unknown`: no document issued here has this code or is this very file' }),
    document: z
      .object({
        firmName: z.string(),
        kind: z.enum(reportKinds),
        revision: z.int().positive(),
        issuedAt: instant,
        sha256: sha256.meta({ description: 'SHA-256 of the issued file' }),
        supersededBy: z.object({ revision: z.int().positive(), issuedAt: instant }).nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'Verification' });
export type Verification = z.infer<typeof verification>;
