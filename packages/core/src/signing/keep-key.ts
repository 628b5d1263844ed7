import type { Sealer } from '@garboard/platform/sealing';
import type { Ctx } from '../context.ts';
import { keyFacts, sealPurpose } from './key-facts.ts';
import type { KeyPair } from './open-p12.ts';

export interface KeepKey {
  firmId: string;
  pair: KeyPair;
  sealer: Sealer;
  /** Who added it, as it will be shown. */
  addedBy: string;
}

/** Writes a firm's key in place of the one it had, the private part sealed. */
export async function keepKey(ctx: Pick<Ctx, 'tx' | 'clock'>, { firmId, pair, sealer, addedBy }: KeepKey) {
  const pkcs8 = pair.key.export({ format: 'der', type: 'pkcs8' });
  const fields = {
    ...keyFacts(pair),
    sealedKey: new Uint8Array(sealer.seal(pkcs8, sealPurpose(firmId))),
    addedAt: ctx.clock(),
    addedBy,
  };
  pkcs8.fill(0);
  return ctx.tx.signingKey.upsert({ where: { firmId }, create: { firmId, ...fields }, update: fields });
}
