import { reportKinds, reportStates } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant, sha256 } from './common.ts';

/** The kinds that can be asked for today. */
export const issuableKinds = [
  'full',
  'recommendations',
  'summary',
  're-inspection',
  'clearance-letter',
  'status-letter',
] as const;

export const reportCreate = z.strictObject({ kind: z.enum(issuableKinds) });
export const report = z
  .object({
    id,
    surveyId: id,
    kind: z.enum(reportKinds),
    revision: z.int(),
    state: z.enum(reportStates),
    progress: z.int().min(0).max(100),
    stage: z.string().meta({ description: 'What is being done just now, in words' }),
    problem: z.string().nullable().meta({ description: 'Why it failed, for people' }),
    superseded: z.boolean(),
    sha256: sha256.nullable(),
    pages: z.int().nullable(),
    bytes: z.int().nullable(),
    verificationCode: z
      .string()
      .nullable()
      .meta({ description: 'Printed in the document; anybody may look it up' }),
    renderer: z.string().nullable().meta({ description: 'What made the pages, with versions' }),
    signedBy: z.string().nullable().meta({ description: 'Whom the certificate names that signed it' }),
    requestedAt: instant,
    requestedBy: z.string(),
    issuedAt: instant.nullable(),
  })
  .meta({ id: 'Report' });
export type Report = z.infer<typeof report>;
