import { type ReportSnapshot, reportSnapshot, snapshotVersion } from '@garboard/contract/report-snapshot';
import { dayIn } from '@garboard/trade/due-dates';
import type { FirmRole, ReportKind } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { coverageOf, unansweredOf } from '../coverage/coverage-of.ts';
import { dueDefaultsOf } from '../firms/due-defaults.ts';
import { freezeInventory } from '../inventory/freeze-inventory.ts';
import { wrongState } from '../problems.ts';
import { freezeWorksheets } from '../worksheets/freeze-worksheets.ts';
import { decodedHullNumber } from './decoded-hull-number.ts';
import { freezeCatalogue } from './freeze-catalogue.ts';
import { lookedAgain } from './looked-again.ts';
import {
  refuseEarlyClearance,
  refuseFailedPhotos,
  refuseUnanswered,
  refuseUnreadyReport,
} from './report-obstacles.ts';
import { changesOf, revisionsUpTo } from './revision-history.ts';
import { findingsOf, freezeFinding, freezeIssued, freezePhoto } from './snapshot-rows.ts';
import { visitOf } from './visit-of.ts';

export type IssuableKind = ReportSnapshot['kind'];

export interface FreezeInput {
  surveyId: string;
  kind: IssuableKind;
  revision: number;
  /** Only to be looked at: a full report is frozen as it stands, ready to be issued or not. */
  preview?: boolean;
  /** The one finding to show, with its measurements alone. */
  only?: string;
  /** By what the document can be looked up; none for a preview. */
  verification?: ReportSnapshot['verification'];
}

type Draft = z.input<typeof reportSnapshot>;

/**
 * Gathers everything a document will say, as things stand in this transaction: a full report from the working
 * copy, every other kind from what was issued. The number of queries doesn't depend on the number of findings.
 *
 * @throws Refusal `wrong-state` when the record is not ready for this kind.
 */
export async function freezeSnapshot(ctx: Ctx, input: FreezeInput): Promise<ReportSnapshot> {
  const draft = input.kind === 'full' ? await fromWorkingCopy(ctx, input) : await fromIssued(ctx, input);
  const preview = input.preview ?? false;
  // Never that of the report from which it is made.
  const snapshot = reportSnapshot.parse({ ...draft, preview, verification: input.verification ?? null });
  const revisions = await revisionsUpTo(ctx, { ...snapshot, surveyId: input.surveyId });
  const changes = snapshot.kind === 'full' ? await changesOf(ctx, input.surveyId, snapshot) : null;
  return { ...snapshot, revisions, changes };
}

/** The record, or one finding of it, as a report would print it now, whether or not it is ready to be issued. */
export async function freezeRecord(
  ctx: Ctx,
  surveyId: string,
  only?: string,
): Promise<ReportSnapshot & { kind: 'full' }> {
  const input = { surveyId, kind: 'full', revision: 1, preview: true } as const;
  const draft = { ...(await fromWorkingCopy(ctx, only ? { ...input, only } : input)), preview: true };
  const record = reportSnapshot.parse(draft);
  if (record.kind !== 'full')
    throw new Error(`The record of survey ${surveyId} was frozen as ${record.kind}.`);
  return record;
}

/** The photos a document shows, each once. */
export function photosOf(snapshot: ReportSnapshot): string[] {
  const lead = 'leadPhoto' in snapshot && snapshot.leadPhoto ? [snapshot.leadPhoto.id] : [];
  const again = 'lookedAgain' in snapshot ? snapshot.lookedAgain : [];
  return [
    ...new Set([
      ...lead,
      ...snapshot.findings.flatMap((f) => f.photos.map((p) => p.id)),
      ...again.flatMap(({ pairs, photos }) => [
        ...pairs.flatMap(({ before, after }) => [before.id, after.id]),
        ...photos.map((p) => p.id),
      ]),
    ]),
  ];
}

async function fromWorkingCopy(ctx: Ctx, input: FreezeInput): Promise<Draft> {
  const { surveyId, kind, revision, preview = false, only } = input;
  const now = ctx.clock();
  const survey = await ctx.tx.survey.findUniqueOrThrow({
    where: { id: surveyId },
    include: { firm: true, vessel: true, attendances: { orderBy: { ordinal: 'asc' } } },
  });
  const findings = (await findingsOf(ctx, surveyId, only)).filter((f) => f.state !== 'withdrawn');
  const issuedOn = dayIn(survey.timeZone, now);
  if (!preview) refuseUnreadyReport(survey, findings, issuedOn);
  const coverage = await coverageOf(ctx, survey);
  if (!preview) refuseUnanswered(unansweredOf(coverage));
  const leadPhoto = survey.leadPhotoId
    ? await ctx.tx.photo.findFirst({ where: { id: survey.leadPhotoId, surveyId } })
    : null;
  if (!preview) {
    refuseFailedPhotos([
      ...(leadPhoto ? [leadPhoto] : []),
      ...findings.flatMap((f) => f.photos.map((p) => p.photo)),
    ]);
  }
  const measured = await freezeWorksheets(ctx, { surveyId, findingIds: findings.map((f) => f.id) });
  const worksheets = only ? measured.filter((w) => w.findingId === only) : measured;
  return {
    schemaVersion: snapshotVersion,
    kind: kind as 'full',
    revision,
    frozenAt: now.toISOString(),
    language: 'en',
    paper: survey.firm.paper as Draft['paper'],
    measures: survey.firm.measures as Draft['measures'],
    timeZone: survey.timeZone,
    firm: letterhead(survey.firm),
    surveyor: await signatory(ctx, survey, preview),
    survey: {
      id: survey.id,
      number: survey.number,
      purpose: survey.purpose as Draft['survey']['purpose'],
      requestedBy: survey.requestedBy,
      scope: survey.scope,
      limitations: survey.limitations,
      clearanceDecidedBy: survey.clearanceDecidedBy as Draft['survey']['clearanceDecidedBy'],
      printCosts: survey.printCosts,
    },
    vessel: {
      ...survey.vessel,
      hullMaterial: survey.vessel.hullMaterial,
      propulsion: survey.vessel.propulsion,
    },
    attendances: survey.attendances.map(freezeAttendance),
    present: survey.present,
    findings: findings.map((f) =>
      freezeFinding(f, { issuedOn, printCosts: survey.printCosts, defaults: dueDefaultsOf(survey.firm) }),
    ),
    leadPhoto: leadPhoto && !only ? freezePhoto(leadPhoto) : null,
    worksheets,
    coverage: coverage.flatMap(({ system, reached, reason, lookedFrom }) =>
      reached ? [{ system, reached, reason, lookedFrom }] : [],
    ),
    inventory: await freezeInventory(ctx, surveyId),
    hullNumberDecoded: decodedHullNumber(survey.vessel.hullNumber, survey.vessel.yearBuilt),
    catalogue: await freezeCatalogue(ctx, survey.firmId, findings),
  };
}

async function fromIssued(ctx: Ctx, { surveyId, kind, revision }: FreezeInput): Promise<Draft> {
  const reports = await ctx.tx.report.findMany({
    where: { surveyId, state: 'issued' },
    orderBy: { id: 'asc' },
    select: { id: true, kind: true, revision: true, issuedAt: true, sha256: true },
  });
  const latest = reports.findLast((r) => r.kind === 'full');
  if (!latest) {
    throw wrongState(
      'The survey report has not been issued yet, and this is made from it. Issue the survey report first.',
    );
  }
  const { snapshot } = await ctx.tx.report.findUniqueOrThrow({
    where: { id: latest.id },
    select: { snapshot: true },
  });
  const record = reportSnapshot.parse(snapshot);
  if (record.kind !== 'full')
    throw new Error(`Report ${latest.id} is kept as full and frozen as ${record.kind}.`);
  const firm = await ctx.tx.survey.findUniqueOrThrow({ where: { id: surveyId }, select: { firm: true } });
  const findings = await findingsOf(ctx, surveyId);
  const { findings: _, ...rest } = record;
  const base = {
    ...rest,
    revision,
    frozenAt: ctx.clock().toISOString(),
    firm: letterhead(firm.firm),
    paper: firm.firm.paper as Draft['paper'],
    measures: firm.firm.measures as Draft['measures'],
    // What became of the full report's revisions is told in it; this document has its own.
    revisions: [],
    changes: null,
  };
  if (kind === 'summary') {
    await refuseUnreleasedSummary(ctx, surveyId);
    const shown = findings.filter((f) => f.state !== 'withdrawn').flatMap(freezeIssued);
    const bare = shown.map((f) => ({ ...f, photos: [], cost: record.survey.printCosts ? f.cost : null }));
    return { ...base, kind, findings: bare, worksheets: [], inventory: [], catalogue: {} };
  }
  if (kind === 're-inspection') {
    const again =
      (await visitOf(ctx, { surveyId, findings })) ?? (await lookedAgain(ctx, { surveyId, findings }));
    return {
      ...base,
      ...(await attendedNow(ctx, surveyId)),
      kind,
      ...again,
      issuedReports: issuedOnes(reports),
    };
  }
  if (kind === 'recommendations' || kind === 'full') {
    const shown = findings.filter((f) => f.state !== 'withdrawn').flatMap(freezeIssued);
    const ids = new Set(shown.map((f) => f.id));
    const { leadPhoto, worksheets } = record;
    // The measurements of these findings; those of the whole vessel are in the report.
    const theirs = worksheets.filter((w) => w.findingId !== null && ids.has(w.findingId));
    // What was reached and found on board belongs to the record, which this kind leaves out.
    return { ...base, kind, leadPhoto, findings: shown, worksheets: theirs, coverage: [], inventory: [] };
  }
  const clearing = findings.filter((f) => f.clearing && f.issued !== null);
  if (kind === 'clearance-letter') refuseEarlyClearance(clearing);
  return {
    ...base,
    kind,
    // A letter tells what became of each finding; its photos are in the report.
    findings: clearing.flatMap(freezeIssued).map((f) => ({ ...f, photos: [] })),
    issuedReports: issuedOnes(reports),
  };
}

/** @throws Refusal `wrong-state` while the client has released the report to no broker. */
async function refuseUnreleasedSummary(ctx: Ctx, surveyId: string): Promise<void> {
  const broker = await ctx.tx.party.findFirst({ where: { surveyId, role: 'broker', released: true } });
  if (!broker) {
    throw wrongState(
      'A summary is made for a broker, and only when the client released it. Add the broker as a party and note the release first.',
    );
  }
}

interface IssuedRow {
  kind: string;
  revision: number | null;
  issuedAt: Date | null;
  sha256: string | null;
}

/** The documents issued before, as a letter or an addendum refers to them. */
const issuedOnes = (reports: readonly IssuedRow[]) =>
  reports.flatMap(({ kind, revision, issuedAt, sha256 }) =>
    issuedAt && sha256 && revision !== null
      ? [{ kind: kind as ReportKind, revision, issuedAt: issuedAt.toISOString(), sha256 }]
      : [],
  );

/** Attendances and people as they stand now: the visit an addendum tells of came after the report. */
async function attendedNow(ctx: Ctx, surveyId: string) {
  const { attendances, present } = await ctx.tx.survey.findUniqueOrThrow({
    where: { id: surveyId },
    select: { attendances: { orderBy: { ordinal: 'asc' } }, present: true },
  });
  return { attendances: attendances.map(freezeAttendance), present };
}

const freezeAttendance = (a: { date: Date; place: string; condition: string }) => ({
  date: a.date.toISOString().slice(0, 10),
  place: a.place,
  condition: a.condition as Draft['attendances'][number]['condition'],
});

interface Letterhead {
  name: string;
  addressLines: string[];
  email: string | null;
  phone: string | null;
}

const letterhead = ({ name, addressLines, email, phone }: Letterhead): Letterhead => ({
  name,
  addressLines,
  email,
  phone,
});

/** Who signs: the survey's surveyor; in a preview nobody need be named yet. @throws Refusal `wrong-state` when none is named. */
async function signatory(ctx: Ctx, survey: { firmId: string; surveyorId: string | null }, preview: boolean) {
  const member = survey.surveyorId
    ? await ctx.tx.firmMember.findUnique({
        where: { firmId_personId: { firmId: survey.firmId, personId: survey.surveyorId } },
        include: { person: { select: { name: true } } },
      })
    : null;
  if (!member || !(['principal', 'surveyor'] satisfies FirmRole[] as string[]).includes(member.role)) {
    if (preview) return { name: 'No surveyor named yet', qualifications: null };
    throw wrongState(
      'No surveyor of your firm is named to sign this report. Choose one in the survey’s particulars.',
    );
  }
  return { name: member.person.name, qualifications: member.qualifications || null };
}
