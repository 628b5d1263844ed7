import type { CoveredItem } from '@garboard/contract/clearances';
import type { SnapshotClearance, SnapshotFinding, SnapshotPhoto } from '@garboard/contract/report-snapshot';
import type { Prisma } from '@garboard/db/database';
import { type DueDefaults, dueOn } from '@garboard/trade/due-dates';
import type {
  Decision,
  FindingState,
  FirmRole,
  Harm,
  PartyRole,
  System,
  Urgency,
} from '@garboard/trade/vocabulary';
import type { WorksheetResult } from '@garboard/trade/worksheets/core/evaluate';
import { type Item, issuedItems, presentItems, standingsOf } from '../clearance/items.ts';
import type { Ctx } from '../context.ts';
import { costOf } from '../findings/cost-columns.ts';

type PhotoRow = Pick<Prisma.PhotoGetPayload<object>, 'id' | 'caption' | 'width' | 'height' | 'takenAt'>;
type ClearanceRow = Prisma.ClearanceGetPayload<{ include: { files: true } }>;
type ExtensionRow = Prisma.DueExtensionGetPayload<object>;
type AnyRole = PartyRole | FirmRole;

const dayOf = (date: Date): string => date.toISOString().slice(0, 10);

/** What is read of a survey's findings for a document: photos in order, evidence and more time given, oldest first. */
export const findingParts = {
  photos: { orderBy: { ordinal: 'asc' }, include: { photo: true } },
  clearances: { orderBy: { id: 'asc' }, include: { files: { orderBy: { ordinal: 'asc' } } } },
  extensions: { orderBy: { id: 'asc' } },
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

function freezeClearance(row: ClearanceRow): SnapshotClearance {
  const worksheet = row.worksheet as unknown as WorksheetResult | null;
  const pictures = row.files.filter((file) => file.mediaType.startsWith('image/'));
  return {
    statement: row.statement,
    workDoneBy: row.workDoneBy,
    workDoneOn: dayOf(row.workDoneOn),
    decision: row.decision as Decision | null,
    decidedByName: row.decidedByName,
    decidedByRole: row.decidedByRole as AnyRole | null,
    decidedAt: row.decidedAt?.toISOString() ?? null,
    reason: row.reason,
    limit: row.limit,
    limitUntil: row.limitUntil && dayOf(row.limitUntil),
    items: row.items as unknown as CoveredItem[],
    sentByName: row.sentByName,
    sentByRole: row.sentByRole as AnyRole,
    sentAt: row.sentAt.toISOString(),
    photos: pictures.length,
    documents: row.files.filter((file) => !pictures.includes(file)).map((file) => file.fileName),
    worksheet: worksheet && { title: worksheet.title, verdict: worksheet.verdict },
  };
}

const freezeExtension = (row: ExtensionRow): SnapshotFinding['extensions'][number] => ({
  from: row.fromOn && dayOf(row.fromOn),
  dueOn: dayOf(row.dueOn),
  reason: row.reason,
  byName: row.byName,
  byRole: row.byRole as AnyRole,
  at: row.at.toISOString(),
});

/** What has become of a finding since it was issued. */
function freezeStanding(row: FindingRow) {
  const evidence = row.clearances.map(freezeClearance);
  return {
    state: row.state as FindingState,
    clearance: evidence.at(-1) ?? null,
    evidence,
    extensions: row.extensions.map(freezeExtension),
    withdrawal: row.withdrawnAt && {
      reason: row.withdrawnReason ?? '',
      by: row.withdrawnBy ?? '',
      at: row.withdrawnAt.toISOString(),
    },
    limit:
      row.acceptedLimit === null
        ? null
        : { text: row.acceptedLimit, until: row.acceptedUntil && dayOf(row.acceptedUntil) },
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
  { issuedOn, printCosts, defaults }: { issuedOn: string; printCosts: boolean; defaults: DueDefaults },
): SnapshotFinding {
  const before = issuedContents(row);
  const urgency = row.urgency as Urgency;
  const dueOnSet = row.dueOnSet && dayOf(row.dueOnSet);
  const unchanged =
    before &&
    before.urgency === urgency &&
    before.withinDays === row.withinDays &&
    (before.dueOnSet ?? null) === dueOnSet;
  const due = dueOnSet ?? dueOn(urgency, row.withinDays, issuedOn, defaults);
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
    // With the time that was given since.
    dueOn: unchanged ? row.dueOn && dayOf(row.dueOn) : due,
    dueOnSet,
    dueStated: urgency === 'before-use' && (unchanged ? statedSince(before, row) : due !== issuedOn),
    harms: row.harms as Harm[],
    references: row.references,
    photos: row.photos.map(({ photo }) => freezePhoto(photo)),
    ...freezeStanding(row),
    // Issuing this very document is what opens a draft.
    state: row.state === 'draft' ? 'open' : (row.state as FindingState),
    items: presentItems(row.items as unknown as Item[], standingsOf(row), row.state),
    cost: printCosts ? costOf(row) : null,
    catalogueKey: row.catalogueKey,
    position: row.position as SnapshotFinding['position'],
  };
}

const statedSince = (issued: SnapshotFinding, row: FindingRow): boolean =>
  issued.urgency === 'before-use' && ((issued.dueStated ?? false) || row.extensions.length > 0);

/** A finding as it was last issued, with what has become of it since. */
export function freezeIssued(row: FindingRow): SnapshotFinding[] {
  const issued = issuedContents(row);
  if (!issued) return [];
  const items = presentItems(issuedItems(row), standingsOf(row), row.state);
  return [
    {
      ...issued,
      ...freezeStanding(row),
      items,
      dueOn: row.dueOn && dayOf(row.dueOn),
      dueStated: statedSince(issued, row),
    },
  ];
}
