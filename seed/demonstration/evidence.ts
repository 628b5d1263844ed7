import { decideClearance } from '@garboard/core/clearance/decide-clearance';
import { extendFinding } from '@garboard/core/clearance/extend-finding';
import { sendClearance } from '@garboard/core/clearance/send-clearance';
import { addComment } from '@garboard/core/comments/add-comment';
import { invoicePdf } from '../world/invoice.ts';
import type { ClearanceSpec, FindingSpec } from '../world/types.ts';
import { received } from './photos.ts';
import { actorOf, as, calendarDay, dayFrom, type Stage } from './stage.ts';
import type { Props } from './surveys.ts';

/** Plays what owners and yards sent for each finding, and what was decided on it. */
export async function playEvidence(
  stage: Stage,
  props: Props,
  findingIds: ReadonlyMap<string, string>,
): Promise<void> {
  for (const finding of props.survey.findings) {
    for (const [round, clearance] of (finding.clearances ?? []).entries()) {
      await playRound(stage, props, {
        finding,
        round,
        clearance,
        findingId: findingIds.get(finding.key) ?? '',
      });
    }
    await playTalk(stage, finding, findingIds.get(finding.key) ?? '');
  }
}

/** More time given for a finding, and what was said about it. */
async function playTalk(
  stage: Stage,
  { extensions = [], comments = [] }: FindingSpec,
  findingId: string,
): Promise<void> {
  for (const { by, day, dueDay, reason } of extensions) {
    const extension = { dueOn: calendarDay(stage, dueDay), reason };
    await as(stage, actorOf(stage, by), dayFrom(stage, day, 15), (ctx) =>
      extendFinding(ctx, { findingId, extension }),
    );
  }
  for (const { by, day, text, visibleTo } of comments) {
    await as(stage, actorOf(stage, by), dayFrom(stage, day, 11), (ctx) =>
      addComment(ctx, { findingId, comment: { text, visibleTo } }),
    );
  }
}

interface Round {
  finding: FindingSpec;
  round: number;
  clearance: ClearanceSpec;
  findingId: string;
}

async function playRound(stage: Stage, props: Props, { finding, round, clearance, findingId }: Round) {
  const sender = actorOf(stage, clearance.sentBy);
  const pictures = props.planned.filter(
    (p) =>
      p.survey === props.survey.key &&
      p.place.kind === 'evidence' &&
      p.place.finding === finding.key &&
      p.place.round === round,
  );
  const files = pictures.flatMap((p) => props.drawn.get(p.fileName) ?? []);
  if (clearance.invoice) {
    const pdf = await invoicePdf(clearance.invoice, stage.loadedAt);
    files.push(await received(stage, `invoice-${clearance.invoice.number}.pdf`, pdf));
  }
  const { statement, workDoneBy } = clearance;
  const workDoneOn = calendarDay(stage, clearance.workDoneDay);
  const sent = await as(stage, sender, dayFrom(stage, clearance.sentDay, 12), (ctx) =>
    sendClearance(ctx, {
      findingId,
      fields: { statement, workDoneBy, workDoneOn },
      upload: { accepted: files, refused: [] },
    }),
  );
  if (!clearance.decision) return;
  const { decision, by, day, reason, limit = '', limitDay } = clearance.decision;
  const limitUntil = limitDay === undefined ? null : calendarDay(stage, limitDay);
  await as(stage, actorOf(stage, by), dayFrom(stage, day, 14), (ctx) =>
    decideClearance(ctx, {
      id: sent.id,
      decision: { decision, reason, limit, limitUntil },
    }),
  );
}
