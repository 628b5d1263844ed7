import { reportKinds, reportStates } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { id, instant, pageQuery, sha256 } from './common.ts';
import { snapshotChanges } from './report-snapshot.ts';

/** The kinds that can be asked for today. */
export const issuableKinds = [
  'full',
  'recommendations',
  'summary',
  're-inspection',
  'clearance-letter',
  'status-letter',
] as const;

export const reportCreate = z.strictObject({
  kind: z.enum(issuableKinds),
  preview: z
    .boolean()
    .default(false)
    .meta({
      description:
        'Only to be looked at by the firm: every page says that it is a draft, it has no number and no signature, ' +
        'issues nothing, and is removed after a day',
    }),
});

export const reportQuery = pageQuery.extend({
  preview: z
    .enum(['true', 'false'])
    .default('false')
    .meta({ description: 'Drafts to look at instead of documents; for the firm' }),
});

export const reportPhotoParams = z.object({ id, photoId: id });
export const reportImageQuery = z.object({ size: z.enum(['thumb', 'screen', 'print']).default('screen') });

/** What a report issued now would say that it changes; null before the first was issued. */
export const surveyChanges = z.object({ changes: snapshotChanges.nullable() }).meta({ id: 'SurveyChanges' });
export type SurveyChanges = z.infer<typeof surveyChanges>;

export const report = z
  .object({
    id,
    surveyId: id,
    kind: z.enum(reportKinds),
    revision: z.int().nullable().meta({
      description: 'From 1 without gaps; null for a draft, and for one that failed and was asked for anew',
    }),
    preview: z.boolean().meta({ description: 'Only to be looked at; never issued' }),
    state: z.enum(reportStates),
    progress: z.int().min(0).max(100),
    stage: z.string().meta({ description: 'What is being done just now, in words' }),
    problem: z.string().nullable().meta({ description: 'Why it failed, for people' }),
    superseded: z.boolean(),
    supersededBy: z
      .object({ id, revision: z.int(), issuedAt: instant })
      .nullable()
      .meta({ description: 'The revision that stands in its place' }),
    changes: snapshotChanges.nullable().meta({ description: 'What differs from the revision before' }),
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
