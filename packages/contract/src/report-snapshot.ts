import {
  attendanceConditions,
  decisions,
  findingStates,
  firmRoles,
  harms,
  partyRoles,
  purposes,
  reportKinds,
  systems,
  urgencies,
} from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, id, instant, sha256, timeZone } from './common.ts';
import { vessel } from './vessels.ts';
import { worksheetResult } from './worksheet-result.ts';

/**
 * Everything a document says, frozen when it was asked for: what is printed depends on this and on nothing else,
 * so that the same row gives the same document years later. Raise the version when a field changes its meaning.
 */
export const snapshotVersion = 1;

const snapshotVessel = vessel.omit({
  id: true,
  firmId: true,
  createdAt: true,
  updatedAt: true,
  version: true,
});

/** A photo as it is printed: its size in pixels is that of the upright picture, quarter turns applied. */
const snapshotPhoto = z.object({
  id,
  caption: z.string(),
  width: z.int().positive(),
  height: z.int().positive(),
  takenAt: instant.nullable(),
});

/** The latest evidence sent for a finding, and the decision on it when there is one. */
const snapshotClearance = z
  .object({
    statement: z.string(),
    workDoneBy: z.string().nullable(),
    workDoneOn: day.nullable(),
    decision: z.enum(decisions).nullable(),
    decidedByName: z.string().nullable(),
    decidedByRole: z.enum([...partyRoles, ...firmRoles]).nullable(),
    decidedAt: instant.nullable(),
    reason: z.string().nullable(),
  })
  .refine((c) => c.decision === null || (c.decidedByName !== null && c.decidedAt !== null), {
    path: ['decision'],
    message: 'A decision needs the name of who decided and the time.',
  });

const snapshotFinding = z.object({
  id,
  number: z.int().positive(),
  system: z.enum(systems),
  title: z.string(),
  observed: z.string(),
  consequence: z.string(),
  recommendation: z.string(),
  urgency: z.enum(urgencies),
  withinDays: z.int().positive().nullable(),
  dueOn: day.nullable(),
  harms: z.array(z.enum(harms)),
  references: z.array(z.string()),
  photos: z.array(snapshotPhoto),
  state: z.enum(findingStates),
  clearance: snapshotClearance.nullable(),
});

/** A worksheet as it is printed; beside its finding, or by itself. */
const snapshotWorksheet = z.object({
  id,
  findingId: id.nullable(),
  title: z.string(),
  result: worksheetResult,
});

const common = {
  schemaVersion: z.literal(snapshotVersion),
  revision: z.int().positive(),
  frozenAt: instant,
  language: z.literal('en'),
  timeZone,
  paper: z.literal('A4'),
  firm: z.object({
    name: z.string(),
    addressLines: z.array(z.string()),
    email: z.string().nullable(),
    phone: z.string().nullable(),
  }),
  surveyor: z.object({ name: z.string(), qualifications: z.string().nullable() }),
  survey: z.object({
    id,
    number: z.string(),
    purpose: z.enum(purposes),
    requestedBy: z.string(),
    scope: z.string(),
    limitations: z.string(),
    clearanceDecidedBy: z.enum(['insurer', 'surveyor']),
  }),
  vessel: snapshotVessel,
  attendances: z.array(z.object({ date: day, place: z.string(), condition: z.enum(attendanceConditions) })),
  findings: z.array(snapshotFinding),
};

const issuedReport = z.object({
  kind: z.enum(reportKinds),
  revision: z.int().positive(),
  issuedAt: instant,
  sha256,
});

const reportParts = {
  ...common,
  leadPhoto: snapshotPhoto.nullable(),
  // Snapshots frozen before there were worksheets have none.
  worksheets: z.array(snapshotWorksheet).default([]),
};
const letterParts = { ...common, issuedReports: z.array(issuedReport) };

/**
 * `full` is the survey report; `recommendations` the same findings without the record around them. The letters
 * list only the findings that require clearing: `clearance-letter` when all are decided, `status-letter` before.
 */
export const reportSnapshot = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('full'), ...reportParts }),
  z.object({ kind: z.literal('recommendations'), ...reportParts }),
  z.object({ kind: z.literal('clearance-letter'), ...letterParts }),
  z.object({ kind: z.literal('status-letter'), ...letterParts }),
]);

export type ReportSnapshot = z.infer<typeof reportSnapshot>;
/** The two kinds that show findings in full. */
export type SurveyReportSnapshot = Extract<ReportSnapshot, { kind: 'full' | 'recommendations' }>;
/** The two kinds that are letters about clearing. */
export type LetterSnapshot = Extract<ReportSnapshot, { kind: 'clearance-letter' | 'status-letter' }>;
export type SnapshotFinding = z.infer<typeof snapshotFinding>;
export type SnapshotPhoto = z.infer<typeof snapshotPhoto>;
export type SnapshotVessel = z.infer<typeof snapshotVessel>;
export type SnapshotWorksheet = z.infer<typeof snapshotWorksheet>;
export type SnapshotClearance = z.infer<typeof snapshotClearance>;
