import type { Clearance } from '@garboard/contract/clearances';
import type { Prisma } from '@garboard/db/database';
import { dayIn } from '@garboard/trade/due-dates';
import type { EventKind } from '@garboard/trade/event-words';
import type { Role } from '@garboard/trade/permissions';
import {
  type ClearanceState,
  clearanceStateLabels,
  type Decision,
  decisionLabels,
} from '@garboard/trade/vocabulary';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { invalidField, Refusal, wrongState } from '../problems.ts';
import { fromDay, writtenDay } from './extension-rows.ts';
import { loadClearance } from './load-clearance.ts';
import { lockFindingOf } from './lock-finding.ts';
import { presentClearance, withFiles } from './present-clearance.ts';
import { type DecisionBody, type Outcome, outcomeOf } from './take-decision.ts';

export interface DecideClearance {
  id: string;
  decision: DecisionBody;
}

type Loaded = Awaited<ReturnType<typeof loadClearance>>;

const eventOf: Record<Exclude<ClearanceState, 'sent' | 'lapsed'>, EventKind> = {
  accepted: 'evidence.accepted',
  returned: 'evidence.returned',
  'accepted-as-is': 'evidence.accepted-as-is',
  'part-accepted': 'evidence.part-accepted',
};

/**
 * Accepts evidence, returns it with a reason, or accepts the defect as it is within a limit; for all that the evidence
 * covers or item by item. Of two decisions the first counts.
 *
 * @throws Refusal `not-found`; `not-allowed` for those whom the survey doesn't name; `invalid-input` for decisions that
 *   don't fit the items or a limit that is past; `already-decided` naming who did and when; `wrong-state`
 */
export async function decideClearance(ctx: Ctx, input: DecideClearance): Promise<Clearance> {
  await lockFindingOf(ctx, input.id);
  const clearance = await loadClearance(ctx, input.id);
  const { survey } = clearance.finding;
  const decider = survey.clearanceDecidedBy === 'insurer' ? 'the insurer' : 'the survey firm’s surveyors';
  const detail = `On this survey ${decider} decide${decider === 'the insurer' ? 's' : ''} on evidence.`;
  const role = authorise(ctx.actor, survey, 'evidence.decide', detail);
  return takeDecision(ctx, clearance, { body: input.decision, role });
}

/** Decides on evidence as the actor in this role, which was looked at before; the finding is held. */
export async function takeDecision(
  ctx: Ctx,
  clearance: Loaded,
  { body, role }: { body: DecisionBody; role: Role },
): Promise<Clearance> {
  const { id, finding } = clearance;
  const { survey } = finding;
  if (clearance.state !== 'sent') throw notWaiting(clearance, survey.timeZone);
  refusePastLimits(body, dayIn(survey.timeZone, ctx.clock()));
  const outcome = outcomeOf(finding, clearance, body);

  const decided = await ctx.tx.clearance.updateMany({
    where: { id, state: 'sent' },
    data: {
      state: outcome.clearance,
      decision: outcome.decision,
      reason: body.reason || null,
      limit: outcome.limit,
      limitUntil: outcome.limitUntil && fromDay(outcome.limitUntil),
      items: outcome.items as unknown as Prisma.InputJsonArray,
      decidedById: actorId(ctx.actor),
      decidedByName: actorName(ctx.actor),
      decidedByRole: role,
      decidedAt: notBefore(ctx.clock(), clearance.sentAt),
    },
  });
  const row = await ctx.tx.clearance.findUniqueOrThrow({ where: { id }, include: withFiles });
  if (decided.count === 0) throw notWaiting(row, survey.timeZone);

  const moved = await ctx.tx.finding.updateMany({
    where: { id: finding.id, state: 'evidence-sent', issuedRevision: finding.issuedRevision },
    data: { state: outcome.finding, ...standingAfter(outcome) },
  });
  if (moved.count === 0) {
    throw wrongState('The finding no longer waits for this decision. Load it again to see what happened.');
  }
  const { firmId, surveyId } = finding;
  const kind = eventOf[outcome.clearance as keyof typeof eventOf];
  const { limit, limitUntil } = outcome;
  // Of several items some may wait for their own evidence.
  const left = outcome.finding === 'open' ? { left: 'items' } : {};
  const data = { reason: reasonsOf(body, outcome), limit, limitUntil, ...left };
  await recordEvent(ctx, { firmId, surveyId, findingId: finding.id, kind, role, data });
  return presentClearance(ctx, row, finding);
}

/** What the finding keeps of a decision: how its items stand and within what it was accepted as it is. */
const standingAfter = ({ standings, accepted: { limit, until } }: Outcome) => ({
  itemStates: standings as unknown as Prisma.InputJsonObject,
  acceptedLimit: limit,
  acceptedUntil: until && fromDay(until),
});

/** Clocks of two servers may differ by minutes; nothing is decided before it was sent. */
const notBefore = (now: Date, sentAt: Date): Date => (now < sentAt ? sentAt : now);

function refusePastLimits(body: DecisionBody, today: string): void {
  const limits = [
    { at: '/limitUntil', until: body.limitUntil },
    ...(body.items ?? []).map((item, place) => ({
      at: `/items/${place}/limitUntil`,
      until: item.limitUntil,
    })),
  ];
  for (const { at, until } of limits) {
    if (until !== null && until < today) {
      throw invalidField(at, `That day is past. Give ${writtenDay(today)} or a later day, or none.`);
    }
  }
}

/** The reasons given, of items decided apart each with its item. */
function reasonsOf(body: DecisionBody, { items }: Outcome): string {
  if (!body.items) return body.reason;
  return items.flatMap(({ text, reason }) => (reason ? [`${text}: ${reason}`] : [])).join('; ');
}

interface Settled {
  state: string;
  decision: string | null;
  decidedByName: string | null;
  decidedAt: Date | null;
}

function notWaiting({ state, decision, decidedByName, decidedAt }: Settled, timeZone: string): Refusal {
  if (state === 'lapsed') {
    return wrongState(
      'The finding was withdrawn before this evidence was decided on; nothing is left to decide.',
    );
  }
  const word = (
    decision ? decisionLabels[decision as Decision] : clearanceStateLabels[state as ClearanceState]
  ).toLowerCase();
  const when = decidedAt
    ? new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short', timeZone }).format(decidedAt)
    : 'before';
  return new Refusal(
    'already-decided',
    `${decidedByName ?? 'Somebody'} decided “${word}” on ${when} (${timeZone}). Load the finding again; new evidence gets a new decision.`,
  );
}
