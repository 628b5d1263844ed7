import type { signInLinkAsk, signInLinkAsked } from '@garboard/contract/account';
import { linkMinutes } from '@garboard/contract/limits';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { makeLink } from './make-link.ts';

/**
 * Has a link mailed to an address. Whether anybody has an account under it is looked up by the worker alone: the
 * answer, what is written and the time it takes are the same for every address.
 */
export async function askSignInLink(
  ctx: Ctx,
  { email }: z.output<typeof signInLinkAsk>,
): Promise<z.output<typeof signInLinkAsked>> {
  await makeLink(ctx, { kind: 'sign-in', email });
  return { minutes: linkMinutes };
}
