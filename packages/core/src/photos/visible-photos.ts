import type { Prisma } from '@garboard/db/database';
import { staffFirmIds } from '../access/actor.ts';
import { ownParties, ownPartiesSql } from '../access/scopes.ts';
import type { Ctx } from '../context.ts';

/**
 * All photos of the actor's own firms; of others those shown in a report issued and released to the actor, to a yard
 * those with which its findings were issued.
 */
export async function visiblePhotos({ actor, tx }: Ctx): Promise<Prisma.PhotoWhereInput> {
  const own = { firmId: { in: staffFirmIds(actor) } };
  if (actor.kind === 'system') return own;
  const part = { ...ownParties(actor), released: true, held: false };
  const survey = { parties: { some: { AND: [part, { role: { not: 'yard' } }] } } };
  const ofFindings = await tx.$queryRaw<{ id: string }[]>`
    SELECT DISTINCT shown.photo->>'id' AS id
      FROM parties p
      JOIN finding_yards y ON y.party_id = p.id
      JOIN findings f ON f.id = y.finding_id AND f.state <> 'draft',
           jsonb_array_elements(f.issued->'photos') AS shown (photo)
     WHERE ${ownPartiesSql(actor)} AND p.role = 'yard' AND p.released AND NOT p.held`;
  const ids = ofFindings.map((row) => row.id);
  return { OR: [own, { survey, reports: { some: { report: { state: 'issued' } } } }, { id: { in: ids } }] };
}
