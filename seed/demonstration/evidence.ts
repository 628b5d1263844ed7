import { decideClearance } from '@garboard/core/clearance/decide-clearance';
import { sendClearance } from '@garboard/core/clearance/send-clearance';
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
  const { decision, by, day, reason } = clearance.decision;
  await as(stage, actorOf(stage, by), dayFrom(stage, day, 14), (ctx) =>
    decideClearance(ctx, {
      id: sent.id,
      decision: { decision, reason, limit: decision === 'accept-as-is' ? reason : '', limitUntil: null },
    }),
  );
}
