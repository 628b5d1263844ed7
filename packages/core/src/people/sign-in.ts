import type { sessionCreated, signIn as signInSchema } from '@garboard/contract/people';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { Refusal } from '../problems.ts';
import { passwordFits } from './passwords.ts';
import { startSession } from './start-session.ts';

/** Signs in. @throws Refusal `wrong-credentials`, the same whether the address or the password is wrong. */
export async function signIn(
  ctx: Ctx,
  input: z.output<typeof signInSchema>,
): Promise<z.output<typeof sessionCreated>> {
  const person = await ctx.tx.person.findUnique({ where: { email: input.email } });
  const fits = await passwordFits(person?.passwordHash ?? null, input.password);
  if (!person || !fits) {
    throw new Refusal(
      'wrong-credentials',
      'Check the e-mail address and the password. If you were invited and have none yet, open the link in the e-mail.',
    );
  }
  return startSession(ctx, person);
}
