import type { AccountChange } from '@garboard/contract/jobs';
import { newId } from '@garboard/db/ids';
import type { Ctx } from '../context.ts';
import { enqueue } from '../outbox/enqueue.ts';

/** Has a person told by mail of a change to how they sign in, so that one that isn't theirs is noticed. */
export async function tellOfAccount(ctx: Ctx, personId: string, change: AccountChange): Promise<void> {
  await enqueue(ctx.tx, 'mail.account-change', { messageId: newId(), personId, change });
}
