import type { Clearance, decisionBody } from '@garboard/contract/clearances';
import type { EventKind } from '@garboard/trade/event-words';
import { afterDecision } from '@garboard/trade/states';
import { type Decision, decisionLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { Refusal, wrongState } from '../problems.ts';
import { loadClearance } from './load-clearance.ts';
import { presentClearance, withFiles } from './present-clearance.ts';

export interface DecideClearance {
  id: string;
  decision: z.output<typeof decisionBody>;
}

const eventOf: Record<Decision, EventKind> = {
  accept: 'evidence.accepted',
  return: 'evidence.returned',
  'accept-as-is': 'evidence.accepted-as-is',
};

/**
 * Accepts evidence, returns it with a reason, or accepts the defect as it is. Of two decisions the first counts.
 *
 * @throws Refusal `not-found`; `not-allowed` for those whom the survey doesn't name; `already-decided`
 */
export async function decideClearance(ctx: Ctx, input: DecideClearance): Promise<Clearance> {
  const { id } = input;
  const { decision, reason } = input.decision;
  const { finding } = await loadClearance(ctx, id);
  const { survey } = finding;
  const decider = survey.clearanceDecidedBy === 'insurer' ? 'the insurer' : 'the survey firm’s surveyors';
  const detail = `On this survey ${decider} decide${decider === 'the insurer' ? 's' : ''} on evidence.`;
  const role = authorise(ctx.actor, survey, 'evidence.decide', detail);

  const after = afterDecision[decision];
  const decided = await ctx.tx.clearance.updateMany({
    where: { id, state: 'sent' },
    data: {
      state: after.clearance,
      decision,
      reason: reason || null,
      decidedById: actorId(ctx.actor),
      decidedByName: actorName(ctx.actor),
      decidedByRole: role,
      decidedAt: ctx.clock(),
    },
  });
  const row = await ctx.tx.clearance.findUniqueOrThrow({ where: { id }, include: withFiles });
  if (decided.count === 0) throw alreadyDecided(presentClearance(row), survey.timeZone);

  const moved = await ctx.tx.finding.updateMany({
    where: { id: finding.id, state: 'evidence-sent' },
    data: { state: after.finding },
  });
  if (moved.count === 0) {
    throw wrongState('The finding no longer waits for this decision. Load it again to see what happened.');
  }
  await recordEvent(ctx, {
    firmId: finding.firmId,
    surveyId: finding.surveyId,
    findingId: finding.id,
    kind: eventOf[decision],
    role,
    data: { reason },
  });
  return presentClearance(row);
}

function alreadyDecided(clearance: Clearance, timeZone: string): Refusal {
  const { decision, decidedBy, decidedAt } = clearance;
  const word = decision ? decisionLabels[decision].toLowerCase() : 'decided';
  const when = decidedAt
    ? new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short', timeZone }).format(
        new Date(decidedAt),
      )
    : 'before';
  const who = decidedBy?.name ?? 'somebody';
  return new Refusal(
    'already-decided',
    `${who} decided “${word}” on ${when} (${timeZone}). Load the finding again; new evidence gets a new decision.`,
  );
}
