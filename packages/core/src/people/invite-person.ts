import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';
import { hashToken, newToken } from './tokens.ts';

const invitationDays = 14;

/**
 * The person with this address, made if new; one without a password is sent a link to choose one.
 *
 * @param input.email lower case
 */
export async function invitePerson(ctx: Ctx, input: { name: string; email: string }) {
  await ctx.tx.person.createMany({ data: [{ id: newId(), ...input }], skipDuplicates: true });
  const person = await ctx.tx.person.findUniqueOrThrow({ where: { email: input.email } });
  if (person.passwordHash === null) {
    const linkId = newId();
    await ctx.tx.oneTimeLink.create({
      data: {
        id: linkId,
        kind: 'invitation',
        email: input.email,
        // The worker makes the secret that it mails; until then this one is known to nobody.
        tokenHash: hashToken(newToken()),
        expiresAt: new Date(ctx.clock().getTime() + invitationDays * 86_400_000),
      },
    });
    await enqueue(ctx.tx, 'mail.invitation', { linkId });
  }
  return person;
}
