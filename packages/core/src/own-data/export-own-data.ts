import type { personExport } from '@garboard/contract/own-data';
import { Prisma } from '@garboard/db/database';
import { widenToAll } from '@garboard/db/special-reads';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { atTheKeyboard } from '../people/prove-presence.ts';
import { named, owned } from './personal-columns.ts';

// Secrets are nobody's data, and a snapshot is the document's, which its readers have.
const leftOut = /hash|secret|token|passcode|password|salt|snapshot|^issued$|^answer$|^fingerprint$|^claim$/;

/**
 * Everything that Garboard keeps of the person who asks: their account, and every row that says it is theirs or that
 * they did it, with any firm, also those they have lost sight of.
 *
 * @throws Refusal `not-allowed` for a key
 */
export async function exportOwnData(ctx: Ctx): Promise<z.input<typeof personExport>> {
  const { personId } = atTheKeyboard(ctx);
  await widenToAll(ctx.tx);
  const sections: z.input<typeof personExport>['sections'] = [];
  for (const [table, column, title] of [
    ...owned,
    ...named.map(([t, c, , words]) => [t, c, words] as const),
  ]) {
    const rows = await rowsOf(ctx, { table, column, personId });
    if (rows.length > 0) sections.push({ table, column, title, rows });
  }
  const [person] = await rowsOf(ctx, { table: 'people', column: 'id', personId });
  return { exportedAt: ctx.clock().toISOString(), person: person ?? {}, sections };
}

async function rowsOf(
  { tx }: Ctx,
  { table, column, personId }: { table: string; column: string; personId: string },
): Promise<Record<string, unknown>[]> {
  const columns = await tx.$queryRaw<{ name: string }[]>`
    SELECT column_name AS name FROM information_schema.columns
    WHERE table_schema = 'public' AND table_name = ${table} AND data_type <> 'bytea' ORDER BY ordinal_position`;
  const kept = columns.map(({ name }) => name).filter((name) => !leftOut.test(name));
  const list = Prisma.raw(kept.map((name) => `'${name}', t."${name}"`).join(', '));
  const rows = await tx.$queryRaw<{ row: Record<string, unknown> }[]>`
    SELECT json_build_object(${list}) AS row FROM ${Prisma.raw(`"${table}"`)} AS t
    WHERE t.${Prisma.raw(`"${column}"`)} = ${personId}::uuid ${table === 'events' ? underFormerIds(personId) : Prisma.empty}`;
  return rows.map(({ row }) => row);
}

/** In the record of a firm that came from another installation somebody may stand under the id they had there. */
const underFormerIds = (personId: string) => Prisma.sql`
  OR (t.firm_id, t.actor_id) IN (SELECT firm_id, former_id FROM former_ids WHERE person_id = ${personId}::uuid)`;
