import type { signingKeyAnswer, signingKeyUpload } from '@garboard/contract/signing-key';
import type { Sealer } from '@garboard/platform/sealing';
import type { z } from 'zod';
import { actorName } from '../access/actor.ts';
import type { Ctx } from '../context.ts';
import { loadFirm, mustBePrincipal } from '../firms/load-firm.ts';
import { invalidField } from '../problems.ts';
import { keepKey } from './keep-key.ts';
import { keyFacts, keyState, presentSigningKey } from './key-facts.ts';
import { openP12 } from './open-p12.ts';

export interface PutSigningKey {
  firmId: string;
  upload: z.output<typeof signingKeyUpload>;
  sealer: Sealer;
}

/**
 * Sets or replaces the key that signs the firm's documents; those already issued keep their signature.
 *
 * @throws Refusal `not-found`, `not-allowed`; `invalid-input` for a file that can't be read, a wrong passphrase, a
 *   key too weak, a certificate that has expired or may not sign.
 */
export async function putSigningKey(
  ctx: Ctx,
  input: PutSigningKey,
): Promise<z.output<typeof signingKeyAnswer>> {
  const { firmId, upload, sealer } = input;
  await loadFirm(ctx, firmId);
  mustBePrincipal(ctx, firmId);
  const pair = openP12(Buffer.from(upload.p12, 'base64'), upload.passphrase);
  const facts = keyFacts(pair);
  const state = keyState(facts, ctx.clock());
  const day = (date: Date) => date.toISOString().slice(0, 10);
  if (state === 'expired') {
    throw invalidField(
      '/p12',
      `This certificate expired on ${day(facts.validUntil)}. Ask its issuer for a new one.`,
    );
  }
  if (state === 'not-yet-valid') {
    throw invalidField('/p12', `This certificate is valid from ${day(facts.validFrom)} on. Add it then.`);
  }
  const row = await keepKey(ctx, { firmId, pair, sealer, addedBy: actorName(ctx.actor) });
  return { key: presentSigningKey(row, ctx.clock()) };
}
