import type { SnapshotClearance, SnapshotFinding, SnapshotPhoto } from '@garboard/contract/report-snapshot';
import type { Prisma } from '@garboard/db/database';
import { dueOn } from '@garboard/trade/due-dates';
import type {
  Decision,
  FindingState,
  FirmRole,
  Harm,
  PartyRole,
  System,
  Urgency,
} from '@garboard/trade/vocabulary';
import type { Ctx } from '../context.ts';
import { costOf } from '../findings/cost-columns.ts';

type PhotoRow = Pick<Prisma.PhotoGetPayload<object>, 'id' | 'caption' | 'width' | 'height' | 'takenAt'>;
type ClearanceRow = Prisma.ClearanceGetPayload<object>;

const dayOf = (date: Date): string => date.toISOString().slice(0, 10);

/** What is read of a survey's findings for a document: photos in order, the latest evidence. */
export const findingParts = {
  photos: { orderBy: { ordinal: 'asc' }, include: { photo: true } },
  clearances: { orderBy: { id: 'desc' }, take: 1 },
} as const satisfies Prisma.FindingInclude;
export type FindingRow = Prisma.FindingGetPayload<{ include: typeof findingParts }>;

/** A survey's findings in the order of the report, or one of them; a few queries however many there are. */
export async function findingsOf(ctx: Ctx, surveyId: string, only?: string): Promise<FindingRow[]> {
  const where = { surveyId, ...(only ? { id: only } : {}) };
  return ctx.tx.finding.findMany({ where, orderBy: { number: 'asc' }, include: findingParts });
}

export function freezePhoto(photo: PhotoRow): SnapshotPhoto {
  const { id, caption, width, height } = photo;
  return { id, caption, width, height, takenAt: photo.takenAt?.toISOString() ?? null };
}

export function freezeClearance(row: ClearanceRow | undefined): SnapshotClearance | null {
  if (!row) return null;
  return {
    statement: row.statement,
    workDoneBy: row.workDoneBy,
    workDoneOn: dayOf(row.workDoneOn),
    decision: row.decision as Decision | null,
    decidedByName: row.decidedByName,
    decidedByRole: row.decidedByRole as PartyRole | FirmRole | null,
    decidedAt: row.decidedAt?.toISOString() ?? null,
    reason: row.reason,
  };
}

/** What was issued of a finding; null for one that never was. */
export function issuedContents(row: { issued: unknown }): SnapshotFinding | null {
  return row.issued === null ? null : (row.issued as SnapshotFinding);
}

/**
 * A finding's working copy as the report prints it. A time limit that was issued before and has not been changed
 * keeps running from its first day. Costs are frozen only where the firm prints them.
 */
export function freezeFinding(
  row: FindingRow,
  { issuedOn, printCosts }: { issuedOn: string; printCosts: boolean },
): SnapshotFinding {
  const before = issuedContents(row);
  const urgency = row.urgency as Urgency;
  const unchanged = before && before.urgency === urgency && before.withinDays === row.withinDays;
  return {
    id: row.id,
    number: row.number,
    system: row.system as System,
    title: row.title,
    observed: row.observed,
    consequence: row.consequence,
    recommendation: row.recommendation,
    urgency,
    withinDays: row.withinDays,
    dueOn: unchanged ? before.dueOn : dueOn(urgency, row.withinDays, issuedOn),
    harms: row.harms as Harm[],
    references: row.references,
    photos: row.photos.map(({ photo }) => freezePhoto(photo)),
    // Issuing this very document is what opens a draft.
    state: row.state === 'draft' ? 'open' : (row.state as FindingState),
    clearance: freezeClearance(row.clearances[0]),
    cost: printCosts ? costOf(row) : null,
    catalogueKey: row.catalogueKey,
    position: row.position as SnapshotFinding['position'],
  };
}

/** A finding as it was last issued, with what has become of it since. */
export function freezeIssued(row: FindingRow): SnapshotFinding[] {
  const issued = issuedContents(row);
  if (!issued) return [];
  return [{ ...issued, state: row.state as FindingState, clearance: freezeClearance(row.clearances[0]) }];
}
