import type { Standing } from '../access/policy.ts';
import { ownParties, visibleFindings } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';

/** A finding with its survey as the actor stands to it: the actor's own party rows. @throws Refusal `not-found` */
export async function loadFinding(ctx: Ctx, findingId: string) {
  const finding = await ctx.tx.finding.findFirst({
    where: { AND: [{ id: findingId }, visibleFindings(ctx.actor)] },
    include: { survey: { include: { parties: { where: ownParties(ctx.actor) } } } },
  });
  if (!finding) throw notFound('finding');
  return finding satisfies { survey: Standing };
}

/** The title under which parties know a finding: that of the last revision, else the working one. */
export const issuedTitle = ({ issued, title }: { issued: unknown; title: string }): string =>
  (issued as { title?: string } | null)?.title ?? title;

export type LoadedFinding = Awaited<ReturnType<typeof loadFinding>>;
