import { createPrivateKey } from 'node:crypto';
import { SealBroken, type Sealer } from '@garboard/platform/sealing';
import type { Ctx } from '../context.ts';
import { wrongState } from '../problems.ts';
import { keyState, sealPurpose } from './key-facts.ts';
import type { KeyPair } from './open-p12.ts';

/** What signs a firm's documents, and whom its certificate names. */
export interface Signer extends KeyPair {
  subject: string;
}

const whatToDo = 'A principal adds one on the firm’s page, as a P12 file with its passphrase.';

async function usableKey(ctx: Ctx, firmId: string) {
  const row = await ctx.tx.signingKey.findUnique({ where: { firmId } });
  if (!row) {
    throw wrongState(`Documents are signed, and the firm has no signing key yet. ${whatToDo}`);
  }
  const state = keyState(row, ctx.clock());
  if (state !== 'usable') {
    const when =
      state === 'expired'
        ? `expired on ${row.validUntil.toISOString().slice(0, 10)}`
        : `is valid from ${row.validFrom.toISOString().slice(0, 10)} only`;
    throw wrongState(`The certificate of the firm’s signing key ${when}. ${whatToDo}`);
  }
  return row;
}

/**
 * Makes sure, before a document is asked for, that it can be signed.
 *
 * @throws Refusal `wrong-state` when the firm has no key, or its certificate has expired: what to do is said.
 */
export async function refuseUnsignable(ctx: Ctx, firmId: string): Promise<void> {
  await usableKey(ctx, firmId);
}

/**
 * Opens a firm's key for signing.
 *
 * @throws Refusal `wrong-state` when there is none, it has expired, or this server's secret doesn't open it.
 */
export async function signerOf(ctx: Ctx, firmId: string, sealer: Sealer): Promise<Signer> {
  const row = await usableKey(ctx, firmId);
  try {
    const pkcs8 = sealer.open(row.sealedKey, sealPurpose(firmId));
    const key = createPrivateKey({ key: pkcs8, format: 'der', type: 'pkcs8' });
    pkcs8.fill(0);
    return { key, certificates: row.certificates.map((c) => Buffer.from(c, 'base64')), subject: row.subject };
  } catch (error) {
    if (!(error instanceof SealBroken)) throw error;
    throw wrongState(
      'The firm’s signing key can’t be opened: the server’s secret is not the one it was kept with. ' +
        'Whoever runs the server can put that secret back; else a principal adds the key again on the firm’s page.',
    );
  }
}
