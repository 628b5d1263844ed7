import type { Ctx } from '../context.ts';

// A finding is held before its evidence, by everybody, so that no two wait for each other and each sees what the
// other did. Who may not change it holds nothing, and is refused afterwards.

/** Holds a finding's row until the transaction ends. */
export async function lockFinding(ctx: Ctx, findingId: string): Promise<void> {
  await ctx.tx.$queryRaw`SELECT id FROM findings WHERE id = ${findingId}::uuid FOR UPDATE`;
}

/** Holds the finding for which evidence was sent. */
export async function lockFindingOf(ctx: Ctx, clearanceId: string): Promise<void> {
  await ctx.tx.$queryRaw`
    SELECT f.id FROM findings f
     WHERE f.id = (SELECT c.finding_id FROM clearances c WHERE c.id = ${clearanceId}::uuid) FOR UPDATE OF f`;
}

/** Holds several, in the order of their ids. */
export async function lockFindings(ctx: Ctx, findingIds: readonly string[]): Promise<void> {
  await ctx.tx
    .$queryRaw`SELECT id FROM findings WHERE id = ANY (${[...findingIds]}::uuid[]) ORDER BY id FOR UPDATE`;
}

/** Holds the findings for which these pieces of evidence were sent, in the order of the findings' ids. */
export async function lockFindingsOf(ctx: Ctx, clearanceIds: readonly string[]): Promise<void> {
  await ctx.tx.$queryRaw`
    SELECT f.id FROM findings f
     WHERE f.id IN (SELECT c.finding_id FROM clearances c WHERE c.id = ANY (${[...clearanceIds]}::uuid[]))
     ORDER BY f.id FOR UPDATE OF f`;
}
