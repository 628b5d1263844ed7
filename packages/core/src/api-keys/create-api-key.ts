import type { apiKeyCreate, apiKeyCreated } from '@garboard/contract/account';
import { newId } from '@garboard/db/ids';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { provePresence } from '../people/prove-presence.ts';
import { tellOfAccount } from '../people/tell-of-account.ts';
import { apiKeyPrefix, hashToken, newToken } from '../people/tokens.ts';
import { invalidField, notAllowed, wrongState } from '../problems.ts';
import { presentKey } from './list-api-keys.ts';

/** As many keys as a person may have at once. */
const mostKeys = 50;
const dayMs = 86_400_000;

/**
 * Makes a key by which a program acts for the person, in one role that they have in one firm. The key is answered this
 * once and kept only as a hash.
 *
 * @throws Refusal `proof-needed`; `not-allowed` for a role that the person doesn't have there; `invalid-input`
 */
export async function createApiKey(
  ctx: Ctx,
  input: z.output<typeof apiKeyCreate> & { sessionHash: string | null },
): Promise<z.output<typeof apiKeyCreated>> {
  const { name, firmId, role, access, expiresOn, sessionHash, currentPassword } = input;
  const actor = await provePresence(ctx, { sessionHash, currentPassword });
  const { personId } = actor;
  const asStaff = actor.memberships.some((m) => m.firmId === firmId && m.role === role);
  const asParty = await ctx.tx.party.findFirst({ where: { firmId, personId, role }, select: { id: true } });
  if (!asStaff && !asParty)
    throw notAllowed('You don’t have this role with this firm, so a key can’t have it.');
  // The whole of the last day, wherever on earth it ends.
  const expiresAt = expiresOn ? new Date(Date.parse(expiresOn) + 1.5 * dayMs) : null;
  if (expiresAt && expiresAt <= ctx.clock()) throw invalidField('/expiresOn', 'Choose a day to come.');
  const live = await ctx.tx.apiKey.count({ where: { personId, revokedAt: null } });
  if (live >= mostKeys)
    throw wrongState(`You have ${mostKeys} keys. End those that you no longer use first.`);
  const token = apiKeyPrefix + newToken();
  const row = await ctx.tx.apiKey.create({
    data: {
      ...{ id: newId(), firmId, personId, name, role, access, expiresAt, createdAt: ctx.clock() },
      tokenHash: hashToken(token),
      beginning: token.slice(0, apiKeyPrefix.length + 4),
    },
    include: { firm: { select: { id: true, name: true } } },
  });
  await tellOfAccount(ctx, personId, 'api-key-made');
  return { ...presentKey(row), token };
}
