import { Prisma } from '@garboard/db/database';
import { widenToAll } from '@garboard/db/special-reads';
import type { Ctx } from '../context.ts';
import { recordEvent } from '../events/record-event.ts';
import { provePresence } from '../people/prove-presence.ts';
import { invalidField, wrongState } from '../problems.ts';
import { bareNames, named, owned } from './personal-columns.ts';

/** What stands where the name was. */
export const erasedName = 'Erased person';

/**
 * Ends the account of who asks and takes their name out of everything that isn't an issued document or an agreement of
 * two sides, which firms must be able to show. Every firm's record says that it was done, and its chain stays whole.
 *
 * @throws Refusal `proof-needed`; `invalid-input` when the address isn't theirs; `wrong-state` for the last principal
 */
export async function erasePerson(
  ctx: Ctx,
  input: { email: string; currentPassword: string | undefined; sessionHash: string | null },
): Promise<void> {
  const { personId, email, name } = await provePresence(ctx, input);
  if (input.email !== email) {
    throw invalidField('/email', 'Write your own e-mail address, so that nothing is erased by mistake.');
  }
  const { tx } = ctx;
  await widenToAll(tx);
  await refuseLastPrincipal(ctx, personId);
  const roles = await tx.$queryRaw<{ firm_id: string; name: string | null; role: string }[]>`
    SELECT firm_id, NULL AS name, role FROM firm_members WHERE person_id = ${personId}::uuid
    UNION SELECT firm_id, name, role FROM parties WHERE person_id = ${personId}::uuid
    UNION SELECT firm_id, NULL, actor_role FROM events WHERE actor_id = ${personId}::uuid
    UNION SELECT e.firm_id, NULL, e.actor_role FROM former_ids f
      JOIN events e ON e.firm_id = f.firm_id AND e.actor_id = f.former_id WHERE f.person_id = ${personId}::uuid`;
  const names = [...new Set([name, email, ...roles.flatMap((r) => r.name ?? [])])];
  // The longest first: a name within another goes with it.
  names.sort((a, b) => b.length - a.length);
  for (const firmId of new Set(roles.map((r) => r.firm_id))) {
    const held = [...new Set(roles.filter((r) => r.firm_id === firmId).map((r) => r.role))];
    const erasure = await recordEvent(ctx, {
      ...{ firmId, kind: 'person.erased', role: held[0] ?? 'party', data: { roles: held.join(', ') } },
      behalf: { id: personId, name: erasedName },
    });
    await tx.$executeRaw`SELECT garboard_erase_from_record(${erasure}::uuid, ${names}, ${erasedName})`;
    await eraseBareNames(ctx, { firmId, personId, name });
  }
  for (const [table, column, nameColumn] of named) {
    if (!nameColumn) continue;
    await tx.$executeRaw`UPDATE ${Prisma.raw(`"${table}"`)} SET ${Prisma.raw(`"${nameColumn}"`)} = ${erasedName}
      WHERE ${Prisma.raw(`"${column}"`)} = ${personId}::uuid`;
  }
  for (const [table, column] of owned) {
    await tx.$executeRaw`DELETE FROM ${Prisma.raw(`"${table}"`)}
      WHERE ${Prisma.raw(`"${column}"`)} = ${personId}::uuid`;
  }
  await tx.oneTimeLink.deleteMany({ where: { email } });
  await tx.person.update({
    where: { id: personId },
    data: {
      ...{ name: erasedName, email: `${personId}@erased.invalid`, passwordHash: null, timeZone: null },
      ...{ mailProblem: 'The account was erased.', mailProblemAt: ctx.clock() },
    },
  });
}

async function refuseLastPrincipal({ tx }: Ctx, personId: string): Promise<void> {
  // Two who go at the same moment: the second waits here, and finds itself the last.
  const firms = await tx.$queryRaw<{ name: string }[]>`
    WITH mine AS (
      SELECT f.id, f.name FROM firms f
      WHERE EXISTS (SELECT FROM firm_members m
        WHERE m.firm_id = f.id AND m.person_id = ${personId}::uuid AND m.role = 'principal')
      ORDER BY f.id FOR UPDATE)
    SELECT name FROM mine`;
  if (firms.length === 0) return;
  const last = await tx.$queryRaw<{ name: string }[]>`
    SELECT f.name FROM firm_members m JOIN firms f ON f.id = m.firm_id
    WHERE m.person_id = ${personId}::uuid AND m.role = 'principal' AND NOT EXISTS (
      SELECT FROM firm_members o
      WHERE o.firm_id = m.firm_id AND o.role = 'principal' AND o.person_id <> m.person_id)`;
  if (last[0]) {
    throw wrongState(
      `You are the last principal of ${last[0].name}. Make a colleague principal first, so that somebody answers for the firm’s records.`,
    );
  }
}

async function eraseBareNames(
  { tx }: Ctx,
  { firmId, personId, name }: { firmId: string; personId: string; name: string },
): Promise<void> {
  const [namesake] = await tx.$queryRaw<{ id: string }[]>`
    SELECT p.id FROM people p WHERE p.name = ${name} AND p.id <> ${personId}::uuid AND (
      EXISTS (SELECT FROM firm_members m WHERE m.person_id = p.id AND m.firm_id = ${firmId}::uuid)
      OR EXISTS (SELECT FROM parties m WHERE m.person_id = p.id AND m.firm_id = ${firmId}::uuid)) LIMIT 1`;
  if (namesake) return;
  for (const [table, column] of bareNames) {
    const cell = Prisma.raw(`"${column}"`);
    await tx.$executeRaw`UPDATE ${Prisma.raw(`"${table}"`)} SET ${cell} = ${erasedName}
      WHERE firm_id = ${firmId}::uuid AND ${cell} = ${name}`;
  }
}
