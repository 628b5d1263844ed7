import { reportKinds } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { instant, sha256 } from './common.ts';

/** Length of a code without its hyphens: 20 letters or digits of 5 bits each, 100 random bits. */
export const codeLength = 20;

// Without I, L, O and U, which are misread or spell words (Crockford's base 32).
const codePattern = /^[0-9A-HJKMNP-TV-Z]{20}$/;

/** A code as it is kept and compared: without hyphens and spaces, capitals, misread letters put right. */
export const plainCode = (typed: string): string =>
  typed.replace(/[\s-]/g, '').toUpperCase().replace(/O/g, '0').replace(/[IL]/g, '1');

/** A code as it is printed: four groups of five. */
export const groupedCode = (code: string): string =>
  plainCode(code)
    .match(/.{1,5}/g)
    ?.join('-') ?? '';

/** Whether something typed has the form of a code. */
export const looksLikeCode = (typed: string): boolean => codePattern.test(plainCode(typed));

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
