import type { Finding } from '@garboard/contract/findings';
import { Prisma } from '@garboard/db/database';
import type { ReadCtx } from '../context.ts';
import { notFound } from '../problems.ts';
import { presentFindings } from './present-finding.ts';
import { readFindings } from './read-findings.ts';

/** A finding the actor may see; parties get the words that were issued. @throws Refusal `not-found` */
export async function getFinding(ctx: ReadCtx, id: string): Promise<Finding> {
  const read = await readFindings(ctx, {
    survey: Prisma.sql`(SELECT g.survey_id FROM findings g WHERE g.id = ${id}::uuid)`,
    where: Prisma.sql`f.id = ${id}::uuid`,
    limit: 1,
    noun: 'finding',
  });
  const [finding] = presentFindings(ctx, read);
  if (!finding) throw notFound('finding');
  return finding;
}
