import type { Finding } from '@garboard/contract/findings';
import type { Ctx } from '../context.ts';
import { notFound } from '../problems.ts';
import { loadFinding } from './load-finding.ts';
import { presentFindings } from './present-finding.ts';

/** A finding the actor may see; parties get the words that were issued. @throws Refusal `not-found` */
export async function getFinding(ctx: Ctx, id: string): Promise<Finding> {
  const { survey, ...row } = await loadFinding(ctx, id);
  const photos = await ctx.tx.findingPhoto.findMany({ where: { findingId: id } });
  const [finding] = await presentFindings(ctx, [{ ...row, photos }], survey);
  if (!finding) throw notFound('finding');
  return finding;
}
