import type { sessionCreated, signIn as signInSchema } from '@garboard/contract/people';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';
import { secretFits } from './passwords.ts';
import { askSecondFactor } from './second-factor.ts';
import { type Origin, startSession } from './start-session.ts';

/**
 * Signs in with a password, and with a code where the person has a second factor.
 *
 * @throws Refusal `wrong-credentials`, the same whether the address or the password is wrong; `code-needed` and
 * `wrong-code` only after the right password
 */
export async function signIn(
  ctx: Ctx,
  input: z.output<typeof signInSchema> & { origin: Origin; sealer: Sealer },
): Promise<z.output<typeof sessionCreated>> {
  const person = await ctx.tx.person.findUnique({ where: { email: input.email } });
  const fits = await secretFits(person?.passwordHash ?? null, input.password);
  if (!person || !fits) {
    throw new Refusal(
      'wrong-credentials',
      'Check the e-mail address and the password, or have a link sent that signs you in without one.',
    );
  }
  await askSecondFactor(ctx, { personId: person.id, code: input.code, sealer: input.sealer });
  return startSession(ctx, person, input.origin);
}
