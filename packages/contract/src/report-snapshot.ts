import { reaches } from '@garboard/trade/coverage';
import { outcomes } from '@garboard/trade/re-inspection';
import { attendanceConditions, purposes, reportKinds, systems, verdicts } from '@garboard/trade/vocabulary';
import { z } from 'zod';
import { day, id, instant, sha256, timeZone } from './common.ts';
import { measureSystems, papers } from './people.ts';
import { type snapshotClearance, snapshotFinding, snapshotPhoto } from './snapshot-finding.ts';
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

/** What of a known defect is printed beside the findings that began from it. */
const snapshotCatalogueEntry = z.object({
  title: z.string(),
  diagram: z
    .object({
      title: z.string(),
      description: z.string(),
      width: z.number(),
      height: z.number(),
      svg: z.string(),
    })
    .nullable(),
});

/** The hull number taken apart when the record was frozen, with the reasons for the verdict. */
const snapshotHullNumber = z.object({
  verdict: z.enum(verdicts),
  reasons: z.array(z.string()),
  fields: z.array(z.object({ label: z.string(), text: z.string() })),
});

const namedFinding = z.object({ number: z.int().positive(), title: z.string() });

/**
 * What differs from an earlier revision; `what` names the parts of a finding that read differently, `record` those
 * of the report around the findings, `reason` why one was withdrawn.
 */
export const snapshotChanges = z.object({
  against: z.int().positive(),
  added: z.array(namedFinding),
  changed: z.array(namedFinding.extend({ what: z.array(z.string()).default([]) })),
  withdrawn: z.array(namedFinding.extend({ reason: z.string().default('') })),
  record: z.array(z.string()).default([]),
});

/** A revision of the same document; one that is being made has no file yet, so no hash. */
const snapshotRevision = z.object({
  revision: z.int().positive(),
  issuedAt: instant,
  sha256: sha256.nullable(),
});

/** By what anybody may look a document up: the code without hyphens, and the address that looks it up. */
const snapshotVerification = z.object({ code: z.string(), url: z.string() });

const common = {
  schemaVersion: z.literal(snapshotVersion),
  // Only to be looked at: marked on every page, without a number, never issued.
  preview: z.boolean().default(false),
  // Of a preview the number the document would get; it isn't printed.
  revision: z.int().positive(),
  frozenAt: instant,
  language: z.literal('en'),
  timeZone,
  paper: z.enum(papers),
  measures: z.enum(measureSystems).default('both'),
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
  // Who else was there; nobody was asked for in snapshots from before.
  present: z.array(z.string()).default([]),
  findings: z.array(snapshotFinding),
  // Snapshots frozen before documents could be verified have none.
  verification: snapshotVerification.nullable().default(null),
  // Nor have older ones a list of revisions or of what changed since the one before.
  revisions: z.array(snapshotRevision).default([]),
  changes: snapshotChanges.nullable().default(null),
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
  hullNumberDecoded: snapshotHullNumber.nullable().default(null),
  catalogue: z.record(z.string(), snapshotCatalogueEntry).default({}),
};

/** What was looked at again after the report, a finding or some items of it: what it showed then and now. */
const snapshotLookedAgain = z.object({
  findingId: id,
  /** What was found, in the surveyor's words; empty when nothing was written down. */
  found: z.string(),
  /** Photos of the report, each with the later one of the same thing. */
  pairs: z.array(z.object({ before: snapshotPhoto, after: snapshotPhoto })),
  // What follows is of a recorded visit; addenda made without one have none. Other photos taken at it:
  photos: z.array(snapshotPhoto).default([]),
  outcome: z.enum(outcomes).nullable().default(null),
  /** The items it is about, in their words; none for the finding as a whole. */
  items: z.array(z.string()).default([]),
  limit: z.string().nullable().default(null),
  limitUntil: day.nullable().default(null),
});

/** The visit that an addendum tells of. */
const snapshotVisit = z.object({
  date: day,
  place: z.string(),
  condition: z.enum(attendanceConditions),
  note: z.string(),
  by: z.string(),
});
const addendumParts = {
  ...common,
  issuedReports: z.array(issuedReport),
  lookedAgain: z.array(snapshotLookedAgain),
  visit: snapshotVisit.nullable().default(null),
};
const letterParts = { ...common, issuedReports: z.array(issuedReport) };

/**
 * `full` is the survey report; `recommendations` the same findings without the record around them; `summary` their
 * titles for a broker. `re-inspection` is an addendum on the findings that were looked at again. The letters list only the findings that require clearing: `clearance-letter` when all are decided, `status-letter` before.
 */
export const reportSnapshot = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('full'), ...reportParts }),
  z.object({ kind: z.literal('recommendations'), ...reportParts }),
  z.object({ kind: z.literal('summary'), ...reportParts }),
  z.object({ kind: z.literal('re-inspection'), ...addendumParts }),
  z.object({ kind: z.literal('clearance-letter'), ...letterParts }),
  z.object({ kind: z.literal('status-letter'), ...letterParts }),
]);

export type ReportSnapshot = z.infer<typeof reportSnapshot>;
/** The kinds made from the whole record: two that show findings in full, and their summary. */
export type SurveyReportSnapshot = Extract<ReportSnapshot, { kind: 'full' | 'recommendations' | 'summary' }>;
/** The addendum on what was looked at again. */
export type AddendumSnapshot = Extract<ReportSnapshot, { kind: 're-inspection' }>;
/** The two kinds that are letters about clearing. */
export type LetterSnapshot = Extract<ReportSnapshot, { kind: 'clearance-letter' | 'status-letter' }>;
export type SnapshotFinding = z.infer<typeof snapshotFinding>;
export type SnapshotPhoto = z.infer<typeof snapshotPhoto>;
export type SnapshotVessel = z.infer<typeof snapshotVessel>;
export type SnapshotWorksheet = z.infer<typeof snapshotWorksheet>;
export type SnapshotCoverage = z.infer<typeof snapshotCoverage>;
export type SnapshotEquipment = z.infer<typeof snapshotEquipment>;
export type SnapshotClearance = z.infer<typeof snapshotClearance>;
export type SnapshotLookedAgain = z.infer<typeof snapshotLookedAgain>;
export type SnapshotHullNumber = z.infer<typeof snapshotHullNumber>;
export type SnapshotChanges = z.infer<typeof snapshotChanges>;
