import type { Extension, extensionCreate } from '@garboard/contract/extensions';
import { newId } from '@garboard/db/ids';
import { addDays, dayIn } from '@garboard/trade/due-dates';
import { decidedFindingStates } from '@garboard/trade/states';
import { type FindingState, findingStateLabels } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import { actorId, actorName } from '../access/actor.ts';
import { authorise } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { issuedTitle, type LoadedFinding, loadFinding } from '../findings/load-finding.ts';
import { invalidField, wrongState } from '../problems.ts';
import { dayOf, fromDay, presentExtension, writtenDay } from './extension-rows.ts';

export interface ExtendFinding {
  findingId: string;
  extension: z.output<typeof extensionCreate>;
}

/** The longest time that may be given at once. */
const mostDays = 1830;

/**
 * Gives more time for a finding that isn't decided yet. Of two who do so at once the first counts; the other is told
 * who it was.
 *
 * @throws Refusal `not-found`, `not-allowed`; `invalid-input` for a day that isn't later; `wrong-state`
 */
export async function extendFinding(ctx: Ctx, { findingId, extension }: ExtendFinding): Promise<Extension> {
  const finding = await loadFinding(ctx, findingId);
  const { firmId, surveyId, survey } = finding;
  const detail = 'More time is given by the survey firm, or by the insurer where it decides on the evidence.';
  const role = authorise(ctx.actor, survey, 'finding.extend', detail);
  refuseUnlessOpen(finding);
  refuseUnlessLater(finding, extension.dueOn, dayIn(survey.timeZone, ctx.clock()));

  const at = ctx.clock();
  const moved = await ctx.tx.finding.updateMany({
    where: { id: findingId, dueOn: finding.dueOn, clearing: true, state: { notIn: notExtended } },
    data: { dueOn: fromDay(extension.dueOn), dueExtendedAt: at },
  });
  if (moved.count === 0) throw await movedMeanwhile(ctx, findingId);
  const row = await ctx.tx.dueExtension.create({
    data: {
      ...{ id: newId(), firmId, surveyId, findingId, fromOn: finding.dueOn, dueOn: fromDay(extension.dueOn) },
      ...{
        reason: extension.reason,
        byId: actorId(ctx.actor),
        byName: actorName(ctx.actor),
        byRole: role,
        at,
      },
    },
  });
  const data = { title: issuedTitle(finding), dueOn: extension.dueOn, reason: extension.reason };
  await recordEvent(ctx, { firmId, surveyId, findingId, kind: 'finding.extended', role, data });
  return presentExtension(row);
}

const notExtended = ['draft', ...decidedFindingStates];

function refuseUnlessOpen({ state, clearing }: LoadedFinding): void {
  if (state === 'draft') {
    throw wrongState('This finding has not been issued yet; set its due date by hand instead.');
  }
  if (!clearing) throw wrongState('This finding is for information and need not be cleared by any day.');
  if (notExtended.includes(state)) {
    const word = findingStateLabels[state as FindingState].toLowerCase();
    throw wrongState(`This finding is ${word}; it needs no more time.`);
  }
}

function refuseUnlessLater({ dueOn }: LoadedFinding, wished: string, today: string): void {
  if (wished < today) {
    throw invalidField('/dueOn', `That day is past. Give ${writtenDay(today)} or a later day.`);
  }
  const due = dayOf(dueOn);
  if (due && wished <= due) {
    throw invalidField('/dueOn', `It is due on ${writtenDay(due)} already. Give a later day.`);
  }
  if (wished > addDays(today, mostDays)) {
    throw invalidField('/dueOn', 'That is more than five years from now. Give an earlier day.');
  }
}

/** Tells of what happened between reading the finding and writing it. */
async function movedMeanwhile(ctx: Ctx, findingId: string) {
  const last = await ctx.tx.dueExtension.findFirst({ where: { findingId }, orderBy: { id: 'desc' } });
  return wrongState(
    last
      ? `${last.byName} gave time until ${writtenDay(dayOf(last.dueOn) ?? '')} just now. Load the finding again.`
      : 'The finding was decided or changed just now. Load it again to see what happened.',
  );
}
