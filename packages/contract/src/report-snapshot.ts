import { costBases } from '@garboard/trade/costs';
import { reaches } from '@garboard/trade/coverage';
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

/** What putting it right may cost, in minor units of the currency. */
const snapshotCost = z.object({
  low: z.int(),
  high: z.int(),
  currency: z.string(),
  basis: z.enum(costBases),
  note: z.string(),
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
  // Only when the firm chose to print costs; snapshots frozen before there were any have none.
  cost: snapshotCost.nullable().default(null),
});

/** A worksheet as it is printed; beside its finding, or by itself. */
const snapshotWorksheet = z.object({
  id,
  findingId: id.nullable(),
  title: z.string(),
  result: worksheetResult,
});

/** How far a system was reached, as it is printed. */
const snapshotCoverage = z.object({
  system: z.enum(systems),
  reached: z.enum(reaches),
  reason: z.string(),
  lookedFrom: z.string(),
});

/** A piece of equipment as it is printed. */
const snapshotEquipment = z.object({
  id,
  system: z.enum(systems),
  name: z.string(),
  maker: z.string().nullable(),
  serialNumber: z.string().nullable(),
  place: z.string().nullable(),
  count: z.int().positive(),
  madeOn: day.nullable(),
  expiresOn: day.nullable(),
  note: z.string(),
});

/** By what anybody may look a document up: the code without hyphens, and the address that looks it up. */
const snapshotVerification = z.object({ code: z.string(), url: z.string() });

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
    printCosts: z.boolean().default(false),
  }),
  vessel: snapshotVessel,
  attendances: z.array(z.object({ date: day, place: z.string(), condition: z.enum(attendanceConditions) })),
  findings: z.array(snapshotFinding),
  // Snapshots frozen before documents could be verified have none.
  verification: snapshotVerification.nullable().default(null),
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
  // Nor have those frozen before coverage was asked for; both in the usual order of systems.
  coverage: z.array(snapshotCoverage).default([]),
  inventory: z.array(snapshotEquipment).default([]),
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
export type SnapshotCoverage = z.infer<typeof snapshotCoverage>;
export type SnapshotEquipment = z.infer<typeof snapshotEquipment>;
export type SnapshotClearance = z.infer<typeof snapshotClearance>;
