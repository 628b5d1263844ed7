import type { reInspectionCreate } from '@garboard/contract/re-inspections';
import type { Prisma } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { itemsLeft } from '@garboard/trade/clearing';
import { awaitsEvidence } from '@garboard/trade/states';
import { type FindingState, findingStateLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { roleFor } from '../access/policy.ts';
import { takeDecision } from '../clearance/decide-clearance.ts';
import { covering } from '../clearance/evidence-parts.ts';
import { fromDay, writtenDay } from '../clearance/extension-rows.ts';
import { issuedItems, standingsOf } from '../clearance/items.ts';
import { loadClearance } from '../clearance/load-clearance.ts';
import type { DecisionBody } from '../clearance/take-decision.ts';
import type { Ctx } from '../context.ts';
import { type LoadedFinding, loadFinding } from '../findings/load-finding.ts';
import { invalidField, Refusal, wrongState } from '../problems.ts';
import { addVisitPhotos } from './visit-photos.ts';

type Seen = z.output<typeof reInspectionCreate>['items'][number];

export interface ApplyOutcome {
  surveyId: string;
  visit: { id: string; date: string; place: string };
  seen: Seen;
  /** Its place in the visit, for pointing at it. */
  ordinal: number;
}

/**
 * What a visit makes of one finding. What was put right, or may stay as it is, becomes evidence of the surveyor's own
 * and, where the surveyor decides, is decided at once; evidence that waits already is decided instead. What was not
 * put right returns evidence that waits, where the surveyor decides, and is otherwise only noted.
 */
export async function applyOutcome(
  ctx: Ctx,
  { surveyId, visit, seen, ordinal }: ApplyOutcome,
): Promise<{ clearanceId: string | null; stateAfter: string }> {
  const finding = await loadFindingOf(ctx, surveyId, seen, ordinal);
  const decides = roleFor(ctx.actor, finding.survey, 'evidence.decide');
  const waiting =
    finding.state === 'evidence-sent'
      ? await ctx.tx.clearance.findFirst({
          where: { findingId: finding.id, state: 'sent' },
          select: { id: true },
        })
      : null;
  const clearanceId = await evidenceFor(ctx, {
    finding,
    visit,
    seen,
    ordinal,
    waiting,
    decides: decides !== null,
  });
  if (clearanceId) {
    await addVisitPhotos(ctx, {
      firmId: finding.firmId,
      surveyId,
      clearanceId,
      photoIds: seen.photoIds,
      ordinal,
    });
    if (decides) {
      const clearance = await loadClearance(ctx, clearanceId);
      await takeDecision(ctx, clearance, { body: decisionOf(seen, visit), role: decides });
    }
  }
  const { state } = await ctx.tx.finding.findUniqueOrThrow({
    where: { id: finding.id },
    select: { state: true },
  });
  return { clearanceId, stateAfter: state };
}

async function loadFindingOf(
  ctx: Ctx,
  surveyId: string,
  seen: Seen,
  ordinal: number,
): Promise<LoadedFinding> {
  const at = `/items/${ordinal}`;
  const finding = await loadFinding(ctx, seen.findingId).catch((error: unknown) => {
    throw error instanceof Refusal && error.type === 'not-found' ? noSuchFinding(at) : error;
  });
  if (finding.surveyId !== surveyId) throw noSuchFinding(at);
  const state = finding.state as FindingState;
  if (state !== 'evidence-sent' && !awaitsEvidence.includes(state)) {
    throw wrongState(
      `Finding ${finding.number} is ${findingStateLabels[state].toLowerCase()}; leave it out of this visit.`,
    );
  }
  if (!finding.clearing) {
    throw wrongState(`Finding ${finding.number} is for information and need not be cleared; leave it out.`);
  }
  const items = issuedItems(finding).map((item) => item.id);
  const left = itemsLeft(items, standingsOf(finding));
  const stranger = seen.itemIds.find((itemId) => !left.includes(itemId));
  if (stranger) {
    throw invalidField(
      `${at}/itemIds`,
      'An item is named that the finding doesn’t have or that is decided already.',
    );
  }
  return finding;
}

const noSuchFinding = (at: string) =>
  invalidField(`${at}/findingId`, 'There is no such finding in this survey.');

interface Evidence {
  finding: LoadedFinding;
  visit: ApplyOutcome['visit'];
  seen: Seen;
  ordinal: number;
  waiting: { id: string } | null;
  decides: boolean;
}

/** The evidence that the visit makes, or that it decides; none when it only notes what was seen. */
async function evidenceFor(ctx: Ctx, { finding, visit, seen, ordinal, waiting, decides }: Evidence) {
  if (waiting) {
    if (!decides) return null;
    if (seen.itemIds.length > 0) {
      throw invalidField(
        `/items/${ordinal}/itemIds`,
        `Evidence for finding ${finding.number} is waiting for your decision. Decide on it first, or on the finding as a whole here.`,
      );
    }
    await ctx.tx.clearance.update({ where: { id: waiting.id }, data: { reInspectionId: visit.id } });
    return waiting.id;
  }
  if (seen.outcome === 'not-put-right') return null;
  return surveyorsEvidence(ctx, finding, visit, seen);
}

async function surveyorsEvidence(
  ctx: Ctx,
  finding: LoadedFinding,
  visit: ApplyOutcome['visit'],
  seen: Seen,
): Promise<string> {
  const { firmId, surveyId } = finding;
  const items = issuedItems(finding);
  const standings = standingsOf(finding);
  const left = itemsLeft(
    items.map((item) => item.id),
    standings,
  );
  const covered = covering(items, seen.itemIds.length > 0 ? seen.itemIds : left);
  const marked = Object.fromEntries(
    covered.map(({ itemId }) => [itemId, { state: 'evidence-sent' as const }]),
  );
  const moved = await ctx.tx.finding.updateMany({
    where: { id: finding.id, state: finding.state, issuedRevision: finding.issuedRevision },
    data: { state: 'evidence-sent', itemStates: { ...standings, ...marked } as Prisma.InputJsonObject },
  });
  if (moved.count === 0) {
    throw wrongState(
      `Finding ${finding.number} was changed just now. Load the survey again and record the visit.`,
    );
  }
  const id = newId();
  await ctx.tx.clearance.create({
    data: {
      ...{ id, firmId, surveyId, findingId: finding.id, reInspectionId: visit.id },
      statement: statementOf(seen, visit),
      workDoneBy: 'Seen by the surveyor',
      workDoneOn: fromDay(visit.date),
      items: covered as unknown as Prisma.InputJsonArray,
      revision: finding.issuedRevision,
      sentById: actorId(ctx.actor),
      sentByName: actorName(ctx.actor),
      sentByRole: roleFor(ctx.actor, finding.survey, 'finding.re-inspect') ?? 'surveyor',
      sentAt: ctx.clock(),
    },
  });
  return id;
}

function statementOf(
  { outcome, note, limit, limitUntil }: Seen,
  { date, place }: ApplyOutcome['visit'],
): string {
  const until = limitUntil ? ` until ${writtenDay(limitUntil)}` : '';
  const found = outcome === 'as-it-is' ? `may stay as it is${until}: ${limit}` : 'put right';
  return [`Seen at ${place} on ${writtenDay(date)}: ${found}.`, note].filter(Boolean).join('\n\n');
}

/** The decision that an outcome stands for. */
function decisionOf(
  { outcome, note, limit, limitUntil }: Seen,
  { date, place }: ApplyOutcome['visit'],
): DecisionBody {
  const seenThere = `Seen at ${place} on ${writtenDay(date)}.`;
  const reason = note ? `${seenThere} ${note}` : seenThere;
  if (outcome === 'put-right') return { decision: 'accept', reason, limit: '', limitUntil: null };
  if (outcome === 'as-it-is') return { decision: 'accept-as-is', reason, limit, limitUntil };
  return { decision: 'return', reason, limit: '', limitUntil: null };
}
