import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { makeLink } from './make-link.ts';

/**
 * The person with this address, made if new; one who has never signed in is sent a link to do so.
 *
 * @param input.email lower case
 */
export async function invitePerson(ctx: Ctx, input: { name: string; email: string }) {
  await ctx.tx.person.createMany({ data: [{ id: newId(), ...input }], skipDuplicates: true });
  const person = await ctx.tx.person.findUniqueOrThrow({ where: { email: input.email } });
  if (person.joinedAt === null) await makeLink(ctx, { kind: 'invitation', email: input.email });
  return person;
}
